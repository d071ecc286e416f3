using Studio.Papers;

namespace Studio.Quotes;

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
            Band(flow, model);
            Price(flow, model);
            Keepsakes(flow, model);
            Care(flow, model);
            ChangeOfMind(flow, model);
            Acceptance(flow, model);
        });

    private static void Opening(PaperFlow flow, QuotePaperModel model)
    {
        flow.Letterhead(model.Studio, model.State);
        if (model.DrawnAgain is { } words)
        {
            flow.Text(words, flow.Type.Strong);
            flow.Space(8);
        }

        flow.Columns(24,
            (1, () =>
            {
                foreach (var line in model.For.Address.Prepend(model.For.Name))
                {
                    flow.Text(line);
                }
            }
        ),
            (1, () => flow.Pairs(Measure.Mm(27), Slip(model))));
        flow.Space(9);
        flow.Title("A quote for " + model.For.Name);
        if (!string.IsNullOrWhiteSpace(model.Remembers))
        {
            flow.Text("In memory of " + model.Remembers, flow.Type.Soft);
        }

        flow.Space(8);
        flow.Text(model.Message);
    }

    private static List<(string Label, string? Value)> Slip(QuotePaperModel model) =>
    [
        ("Quote", model.Number),
        ("Written on", model.Format.Day(model.WrittenUtc)),
        ("Commission", model.Commission),
        ("Replaces", model.Replaces is { } before ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"version {before}") : null),
    ];

    // below what is made, never above it
    private static void Band(PaperFlow flow, QuotePaperModel model)
    {
        var format = model.Format;
        var glance = new List<(string, string)> { (Taxed(model) ? $"Total, {model.TaxName} included" : "Total", format.Money(model.Total)) };
        if (model.Deposit > 0)
        {
            glance.Add(("To begin", format.Money(model.Deposit)));
        }

        if (model.ValidUntil is { } until)
        {
            glance.Add(("This offer stands until", format.Day(until)));
        }

        flow.Space(2);
        flow.Keep(() => flow.Glance(glance));
    }

    // what is promised stands out from what was wished
    private static void Days(PaperFlow flow, QuotePaperModel model)
    {
        flow.Space(5);
        flow.Text("When it is with you", flow.Type.Label);
        if (model.PromiseOn is { } promised)
        {
            flow.Text($"We promise it for {model.Format.Day(promised)}.", flow.Type.Strong);
        }
        else
        {
            flow.Text("No day is promised yet.");
        }

        if (model.NeededBy is { } needed)
        {
            flow.Text($"You asked for it by {model.Format.Day(needed)}.");
        }
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

            flow.Space(5);
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
        flow.Columns(24,
            (1.15, () =>
            {
                flow.Heading(model.Included.Count > 0 ? "What the price includes" : "How and when", 6);
                flow.Bullets(model.Included);
                if (!string.IsNullOrWhiteSpace(model.Delivery))
                {
                    flow.Space(5);
                    flow.Text("How it comes to you", flow.Type.Label);
                    flow.Text(model.Delivery);
                }

                Days(flow, model);
            }
        ),
            (1, () => PriceTable(flow, model)));
    }

    private static void PriceTable(PaperFlow flow, QuotePaperModel model)
    {
        var (format, type) = (model.Format, flow.Type);
        flow.Heading("The price", 6);
        var rows = new List<IReadOnlyList<PaperCell>>();
        if (model.DeliveryPrice > 0)
        {
            Row(model.Pieces.Count == 1 ? model.Pieces[0].Name : "The pieces", model.Net - model.DeliveryPrice, type.Text);
            Row("Delivery to you", model.DeliveryPrice, type.Text);
        }

        if (Taxed(model))
        {
            Row("Price before " + model.TaxName, model.Net, type.Text);
            Row($"{model.TaxName} at {format.Percent(model.TaxPercent)}", model.Tax, type.Text);
        }

        Row("Total", model.Total, type.Strong);
        if (model.Deposit > 0)
        {
            Row("Deposit, to begin", model.Deposit, type.Text);
            Row("Balance, when it is done", model.Balance, type.Text);
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

        if (model.CellsNotSettled.Count > 0)
        {
            notes.Add($"Which cells it takes is not settled yet for: {string.Join(", ", model.CellsNotSettled)}. Swallowed, a button cell can kill a child within hours; we will tell you with the piece whether it holds any.");
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
        flow.Space(10);
        flow.Keep(() => flow.Boxed(() =>
        {
            flow.Block("H2", "To accept", flow.Type.Heading);
            flow.Space(2);
            var format = model.Format;
            var by = model.ValidUntil is { } until ? $" by {format.Day(until)}" : "";
            var begin = model.Deposit > 0 ? $", of which {format.Money(model.Deposit)} is the deposit with which you begin" : "";
            flow.Text($"I order what this quote, {model.Number}, describes: {string.Join(", ", model.Pieces.Select(p => p.Name))}. I agree to pay {format.Money(model.Total)}{begin}.");
            flow.Space(3);
            var to = model.Studio.Address.Count > 0 ? string.Join(", ", model.Studio.Address.Prepend(model.Studio.StudioName)) : model.Studio.StudioName;
            flow.Text($"Please send this page back{by} to {to}, or simply write to us.", flow.Type.Small);
            flow.Signatures(Measure.Mm(10), (1.2, "Name"), (0.7, "Date"), (1.2, "Signature"));
        }));
    }
}
