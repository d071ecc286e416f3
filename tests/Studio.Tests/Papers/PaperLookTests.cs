using Studio.Bench;
using Studio.Keepsakes;
using Studio.Papers;
using Studio.Quotes;

namespace Studio.Tests.Papers;

/// <summary>Leaves every paper in the folder named by STUDIO_PAPERS, to be looked at.</summary>
public sealed class PaperLookTests
{
    public static TheoryData<PaperSize> Sizes => [PaperSize.A4, PaperSize.Letter];

    [Theory, MemberData(nameof(Sizes))]
    public void Every_paper_can_be_left_in_a_folder_to_be_looked_at(PaperSize size)
    {
        var folder = Environment.GetEnvironmentVariable("STUDIO_PAPERS");
        foreach (var (name, pdf) in PaperSet.All(size))
        {
            pdf.Length.ShouldBeGreaterThan(1000);
            if (folder is not null)
            {
                File.WriteAllBytes(Path.Combine(folder, $"{name}-{size}.pdf"), pdf);
            }
        }
    }
}

internal static class PaperSet
{
    public static IEnumerable<(string Name, byte[] Pdf)> All(PaperSize size) =>
    [
        ("quote", QuotePaper.Create(PaperSamples.Quote(), size)),
        ("quote-bare", QuotePaper.Create(PaperSamples.BareQuote(), size)),
        ("quote-odd", QuotePaper.Create(PaperSamples.OddQuote(), size)),
        ("receipt", ReceiptPaper.Create(PaperSamples.Receipt(), size)),
        ("receipt-40", ReceiptPaper.Create(PaperSamples.Receipt(40), size)),
        ("receipt-bare", ReceiptPaper.Create(PaperSamples.BareReceipt(), size)),
        ("labels", LabelPaper.Create(PaperSamples.Labels(30, start: 5), size)),
        ("pour", PourPaper.Create(PaperSamples.PourSheet(), size)),
        ("pour-long", PourPaper.Create(PaperSamples.LongPourSheet(), size)),
        ("pour-bare", PourPaper.Create(PaperSamples.BarePourSheet(), size)),
    ];
}
