using Studio.Papers;

namespace Studio.Quotes;

/// <summary>What the quote for the family says. Prices only: what a piece costs the studio has no place here.</summary>
public sealed record QuotePaperModel
{
    public required PaperLetterhead Studio { get; init; }

    public required PaperFormat Format { get; init; }

    /// <summary>The quote's number with its version, such as "Q-26-0012, version 2".</summary>
    public required string Number { get; init; }

    public required DateTime WrittenUtc { get; init; }

    public required PaperPerson For { get; init; }

    /// <summary>Whom the piece remembers; null where nobody is named.</summary>
    public string? Remembers { get; init; }

    /// <summary>A few words of the maker's own, set above the piece.</summary>
    public string? Message { get; init; }

    public required IReadOnlyList<QuotePaperPiece> Pieces { get; init; }

    /// <summary>What the price covers, one thing a line.</summary>
    public IReadOnlyList<string> Included { get; init; } = [];

    public required decimal Net { get; init; }

    /// <summary>Name of the tax, such as VAT.</summary>
    public string TaxName { get; init; } = "Tax";

    /// <summary>Zero leaves the tax line out.</summary>
    public decimal TaxPercent { get; init; }

    public decimal Tax { get; init; }

    public required decimal Total { get; init; }

    public decimal Deposit { get; init; }

    public decimal Balance { get; init; }

    /// <summary>The last day on which the offer stands.</summary>
    public DateOnly? ValidUntil { get; init; }

    public DateOnly? NeededBy { get; init; }

    /// <summary>How it comes to them: "Delivered by hand", "Collected from the studio".</summary>
    public string? Delivery { get; init; }

    /// <summary>Each keepsake and what will be done with it, a line each.</summary>
    public IReadOnlyList<QuotePaperKeepsake> Keepsakes { get; init; } = [];

    public bool HasLights { get; init; }

    public bool HasButtonCells { get; init; }

    /// <summary>Care notes beyond the standing ones.</summary>
    public IReadOnlyList<string> Care { get; init; } = [];

    /// <summary>The studio's own words on cancelling, in place of the standing ones.</summary>
    public string? CancellationNote { get; init; }
}

/// <summary>One piece in plain words.</summary>
/// <param name="Size">Such as "150 × 150 mm at the base, 120 mm high".</param>
/// <param name="Contains">What will be in it, from the bottom up or as the family thinks of it.</param>
/// <param name="Price">Its own price where a quote holds several; tax as in the total's net.</param>
public sealed record QuotePaperPiece(string Name, string? Description, string? Size, IReadOnlyList<string> Contains, PaperDrawing? Section = null, int Quantity = 1, decimal? Price = null);

/// <summary>A keepsake and what becomes of it.</summary>
/// <param name="WhatWeDo">Such as "set whole in the second layer" or "copied on film; the photograph itself comes back to you".</param>
public sealed record QuotePaperKeepsake(string Description, string WhatWeDo, string? EntryNumber = null);

/// <summary>The quote for the family.</summary>
public static class QuotePaper
{
    public static byte[] Create(QuotePaperModel model, PaperSize size) => PaperFlow.Render(
        new PaperSetup($"Quote {model.Number} for {model.For.Name}", size, PaperType.Family(), model.Format.Language, model.Studio.StudioName,
            $"{model.Studio.StudioName} · Quote {model.Number}", model.WrittenUtc),
        flow =>
        {
            Opening(flow, model);
            Pieces(flow, model);
            Price(flow, model);
            Keepsakes(flow, model);
            Care(flow, model);
            ChangeOfMind(flow, model);
            Acceptance(flow, model);
        });

    private static void Opening(PaperFlow flow, QuotePaperModel model)
    {
        flow.Letterhead(model.Studio);
        flow.Title("A quote for " + model.For.Name);
        if (!string.IsNullOrWhiteSpace(model.Remembers))
        {
            flow.Text("In memory of " + model.Remembers, flow.Type.Soft);
        }

        flow.Space(3);
        flow.Text($"Quote {model.Number}, written on {model.Format.Day(model.WrittenUtc)}", flow.Type.Label);
        flow.Text(string.Join(", ", model.For.Address), flow.Type.Label);
        flow.Space(11);
        flow.Glance(FirstGlance(model));
        flow.Space(11);
        flow.Text(model.Message);
    }

    private static List<(string Label, string Value)> FirstGlance(QuotePaperModel model)
    {
        var format = model.Format;
        var glance = new List<(string, string)> { (Taxed(model) ? $"Total, {model.TaxName} included" : "Total", format.Money(model.Total)) };
        if (model.Deposit > 0)
        {
            glance.Add(("To begin", format.Money(model.Deposit)));
        }

        if (model.NeededBy is { } needed)
        {
            glance.Add(("With you by", format.Day(needed)));
        }

        if (model.ValidUntil is { } until)
        {
            glance.Add(("This offer stands until", format.Day(until)));
        }

        return glance;
    }

    private static void Pieces(PaperFlow flow, QuotePaperModel model)
    {
        flow.Heading("What we would make for you");
        foreach (var piece in model.Pieces)
        {
            if (piece.Section is { } section)
            {
                flow.Space(4);
                flow.Columns(20,
                    (1.3, () => flow.Drawing(section, Measure.Mm(60))),
                    (1, () => Words(flow, piece, model.Format)));
            }
            else
            {
                flow.Keep(() => Words(flow, piece, model.Format));
            }

            flow.Space(10);
        }
    }

    private static void Words(PaperFlow flow, QuotePaperPiece piece, PaperFormat format)
    {
        flow.Block("H3", piece.Quantity > 1 ? $"{piece.Name}, {piece.Quantity} of them" : piece.Name, flow.Type.Strong);
        flow.Text(piece.Size, flow.Type.Soft);
        flow.Text(piece.Description);
        if (piece.Contains.Count > 0)
        {
            flow.Space(5);
            flow.Text("What will be in it", flow.Type.Label);
            flow.Space(1.5);
            flow.Bullets(piece.Contains);
        }

        if (piece.Price is { } price)
        {
            flow.Space(4);
            flow.Text("Price of this piece " + format.Money(price), flow.Type.Text);
        }
    }

    private static void Price(PaperFlow flow, QuotePaperModel model)
    {
        var left = model.Included.Count > 0 || !string.IsNullOrWhiteSpace(model.Delivery);
        flow.Space(4);
        if (!left)
        {
            flow.Keep(() => PriceTable(flow, model));
            return;
        }

        flow.Columns(24,
            (1.15, () =>
            {
                flow.Heading("What the price includes", 6);
                flow.Bullets(model.Included);
                if (!string.IsNullOrWhiteSpace(model.Delivery))
                {
                    flow.Space(5);
                    flow.Text("How it comes to you", flow.Type.Label);
                    flow.Text(model.Delivery);
                }
            }
        ),
            (1, () => PriceTable(flow, model)));
    }

    private static void PriceTable(PaperFlow flow, QuotePaperModel model)
    {
        var (format, type) = (model.Format, flow.Type);
        flow.Heading("The price", 6);
        var rows = new List<IReadOnlyList<PaperCell>>();
        if (Taxed(model))
        {
            Row("Price before " + model.TaxName, model.Net, type.Text);
            Row($"{model.TaxName} at {format.Percent(model.TaxPercent)}", model.Tax, type.Text);
        }

        Row("Total", model.Total, type.Strong);
        if (model.Deposit > 0)
        {
            Row("Deposit, to begin", model.Deposit, type.Text);
            Row("Balance, before delivery", model.Balance, type.Text);
        }

        flow.Table([new("", 2), new("", 1, Right: true)], rows);

        void Row(string label, decimal amount, PaperStyle style) =>
            rows.Add([PaperCell.Of(label, style), PaperCell.Of(format.Money(amount), style)]);
    }

    private static bool Taxed(QuotePaperModel model) => model.TaxPercent > 0 || model.Tax > 0;

    private static void Keepsakes(PaperFlow flow, QuotePaperModel model) => flow.Keep(() =>
    {
        flow.Heading("Your keepsakes");
        flow.Text("Each thing you lend us gets a number, a receipt and a place of its own, and we do with it only what you allow. " +
            "What is not set in the piece comes back to you; nothing is ever thrown away without your word. What has been cast cannot be taken out again.");
        if (model.Keepsakes.Count > 0)
        {
            flow.Space(3);
            flow.Bullets([.. model.Keepsakes.Select(Line)]);
        }
    });

    private static string Line(QuotePaperKeepsake keepsake) =>
        keepsake.EntryNumber is { Length: > 0 } number ? $"{keepsake.Description} ({number}): {keepsake.WhatWeDo}" : $"{keepsake.Description}: {keepsake.WhatWeDo}";

    private static void Care(PaperFlow flow, QuotePaperModel model)
    {
        var notes = new List<string>
        {
            "It is made to be kept and looked at. It is not a toy, and food and drink should not touch it.",
            "Keep it out of strong sun and away from heaters, candles and hot cars: sun yellows resin in time, and heat softens it.",
            "Dust it with a soft damp cloth; solvents and scouring cloths dull it. Set it where it cannot fall on anyone.",
        };
        if (model.HasLights)
        {
            notes.Add("Its lights are for a dry room. Switch them off when nobody is there.");
        }

        if (model.HasButtonCells)
        {
            notes.Add("It holds button cells. Swallowed, a button cell can kill a child within hours: keep the compartment screwed shut, keep cells out of reach, " +
                "and if one may have been swallowed go to a hospital at once.");
        }

        flow.Heading("Care and safety");
        flow.Bullets([.. notes, .. model.Care]);
    }

    private static void ChangeOfMind(PaperFlow flow, QuotePaperModel model)
    {
        flow.Heading("If you change your mind");
        flow.Text(model.CancellationNote ??
            "A piece like this is made for you alone. The right to send back what one has bought at a distance often does not cover things made to order, " +
            "so please ask us anything before you accept. Should you need to stop, tell us as soon as you can: we would keep only what the work has cost us by then. " +
            "The law where you live comes first, and nothing here takes away a right it gives you, least of all when something is wrong with the piece.");
    }

    private static void Acceptance(PaperFlow flow, QuotePaperModel model)
    {
        flow.Space(16);
        flow.Keep(() => flow.Boxed(() =>
        {
            flow.Block("H2", "To accept", flow.Type.Heading);
            flow.Space(2);
            var by = model.ValidUntil is { } until ? $" by {model.Format.Day(until)}" : "";
            var begin = model.Deposit > 0 ? " We begin when the deposit has reached us." : "";
            flow.Text($"Sign here and send this page back to us{by}, or simply write to us.{begin}");
            flow.Signatures(Measure.Mm(12), (1.2, "Name"), (0.7, "Date"), (1.2, "Signature"));
        }));
    }
}
