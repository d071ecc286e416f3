using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Pieces;
using Studio.Quotes;
using Studio.Tests.Papers;

namespace Studio.Tests.Quotes;

/// <summary>A walk over every quote of a released demo studio: the size on paper is the casting's as the engine has it.</summary>
public sealed class DemoQuotesTests : IDisposable
{
    private readonly QuoteScene scene = new("studio-0.3.0.db");

    public void Dispose() => scene.Dispose();

    [Fact]
    public async Task The_size_on_every_paper_is_the_castings()
    {
        var quotes = await scene.ReadAsync(db => db.Set<Quote>().AsNoTracking().Where(q => q.Result != null).ToListAsync());
        var wrong = new List<string>();
        foreach (var quote in quotes)
        {
            var piece = await scene.ReadAsync(db => db.Set<Piece>().Include(p => p.Mould).Include(p => p.Layers.OrderBy(l => l.Order)).ThenInclude(l => l.Resin).AsNoTracking().SingleAsync(p => p.Id == quote.PieceId));
            var top = LayersCalculation.Run(PieceBook.Design(piece)).Value.Layers[^1].ToMm;
            var plan = MouldShapes.Make(piece.Mould!.Spec).Value.Outline.PlanAt(top);
            var paper = (await scene.PaperAsync(quote.Id)).Content;
            if (Environment.GetEnvironmentVariable("STUDIO_PAPERS") is { } folder)
            {
                await File.WriteAllBytesAsync(Path.Combine(folder, $"demo-quote-{quote.Id}.pdf"), paper, TestContext.Current.CancellationToken);
            }

            var words = PaperWords.Of(paper);
            var foot = string.Create(CultureInfo.InvariantCulture, $"{plan.Max(p => p.XMm) - plan.Min(p => p.XMm):0} mm");
            var high = string.Create(CultureInfo.InvariantCulture, $"{top:0} mm high");
            if (!words.Contains(high, StringComparison.Ordinal) || !words.Contains(foot, StringComparison.Ordinal))
            {
                wrong.Add($"{piece.Name} in {piece.Mould.Name}: {foot}, {high}, but the paper says {words.Split("About").ElementAtOrDefault(1)?[..60]}");
            }
        }

        quotes.Count.ShouldBeGreaterThanOrEqualTo(12);
        wrong.ShouldBeEmpty();
    }
}
