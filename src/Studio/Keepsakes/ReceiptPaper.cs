using Studio.Papers;

namespace Studio.Keepsakes;

/// <summary>
/// What a keepsake receipt says: the object-entry record of the Spectrum standard (Collections Trust), one or more keepsakes.
/// A field that the record wants and nobody has filled is printed as a line to write on.
/// </summary>
public sealed record ReceiptPaperModel
{
    public required PaperLetterhead Studio { get; init; }

    public required PaperFormat Format { get; init; }

    /// <summary>The commission's number.</summary>
    public required string Commission { get; init; }

    public string? Remembers { get; init; }

    public required PaperPerson Owner { get; init; }

    /// <summary>Who brought them, where that is not the owner.</summary>
    public PaperPerson? Depositor { get; init; }

    /// <summary>By what right the depositor brings them: "daughter, with the owner's written word".</summary>
    public string? DepositorAuthority { get; init; }

    /// <summary>When it was written; each keepsake says when it came.</summary>
    public required DateTime WrittenUtc { get; init; }

    /// <summary>A word for a paper that was not given yet, or is not the last one; empty for the one that is given.</summary>
    public string State { get; init; } = "";

    /// <summary>Why they are here: "to be set in a memorial piece".</summary>
    public string Reason { get; init; } = "";

    /// <summary>The family's wishes for all of them together.</summary>
    public string OwnersRequirements { get; init; } = "";

    public DateOnly? ReturnBy { get; init; }

    public string Insurance { get; init; } = "";

    public required IReadOnlyList<ReceiptPaperKeepsake> Keepsakes { get; init; }

    /// <summary>Anything more, in the studio's words.</summary>
    public string? Note { get; init; }

    /// <summary>The studio's own terms in place of the standing ones.</summary>
    public string? Terms { get; init; }
}

/// <summary>One keepsake as it came in.</summary>
public sealed record ReceiptPaperKeepsake
{
    public required string EntryNumber { get; init; }

    public required string Kind { get; init; }

    public string Description { get; init; } = "";

    /// <summary>How many objects go under this number.</summary>
    public int Count { get; init; } = 1;

    /// <summary>Where weighed [g].</summary>
    public double? MassG { get; init; }

    /// <summary>In words of the trade.</summary>
    public string Condition { get; init; } = "";

    public string Completeness { get; init; } = "";

    /// <summary>What the family permits, as a sentence: "All of it may be set in resin."</summary>
    public required string Permission { get; init; }

    /// <summary>The owner's reason where the only photograph may be cast all the same; null where nothing was overruled.</summary>
    public string? Overruled { get; init; }

    /// <summary>The family's wishes for this one.</summary>
    public string? Requirements { get; init; }

    /// <summary>When, by whom and how it came, as a sentence.</summary>
    public string Came { get; init; } = "";

    /// <summary>What has left since, as a sentence; null where all of it is still here.</summary>
    public string? Since { get; init; }

    /// <summary>A small photograph as JPEG, a few hundred pixels wide; null for none.</summary>
    public byte[]? ThumbnailJpeg { get; init; }
}

/// <summary>The receipt that the family takes home, and the studio's record of entry.</summary>
public static class ReceiptPaper
{
    private static readonly IReadOnlyList<PaperColumn> Columns =
    [
        new("Photograph", 0.85), new("Entry number", 1.15), new("What it is", 1.5), new("Condition and completeness", 1.6), new("What the family permits", 1.5),
    ];

    public static byte[] Create(ReceiptPaperModel model, PaperSize size) => PaperFlow.Render(
        new PaperSetup($"Keepsake receipt {model.Commission} for {model.Owner.Name}", size, PaperType.Work(), model.Format.Language, model.Studio.StudioName,
            $"{model.Studio.StudioName} · Keepsake receipt · Commission {model.Commission}", model.WrittenUtc)
        { SideMm = 18 },
        flow =>
        {
            flow.Letterhead(model.Studio, model.State);
            Opening(flow, model);
            People(flow, model);
            flow.Heading(Count(model));
            flow.Table(Columns, [.. model.Keepsakes.Select(k => Row(flow, k, model.Format))]);

            // a signature stands on the page that says what is signed
            flow.Keep(() =>
            {
                Agreed(flow, model);
                Signatures(flow, model);
            });
        });

    private static void Opening(PaperFlow flow, ReceiptPaperModel model)
    {
        flow.Title("Receipt for keepsakes");
        if (!string.IsNullOrWhiteSpace(model.Remembers))
        {
            flow.Text("In memory of " + model.Remembers, flow.Type.Text);
        }

        flow.Space(8);
    }

    private static void People(PaperFlow flow, ReceiptPaperModel model)
    {
        var format = model.Format;
        flow.Columns(20,
            (1, () =>
            {
                Person(flow, "Owner", model.Owner);
                if (model.Depositor is { } depositor)
                {
                    flow.Space(4);
                    Person(flow, "Brought by", depositor);
                    flow.Pairs(Measure.Mm(24), [("By what right", model.DepositorAuthority ?? "")]);
                }
            }
        ),
            (1, () => flow.Pairs(Measure.Mm(24),
            [
                ("Commission", model.Commission),
                ("Written", format.FullMoment(model.WrittenUtc)),
                ("Why they are here", model.Reason),
            ])));
    }

    private static void Person(PaperFlow flow, string role, PaperPerson person)
    {
        flow.Pairs(Measure.Mm(24), [(role, person.Name)], flow.Type.Strong);
        flow.Pairs(Measure.Mm(24),
        [
            ("Address", string.Join(", ", person.Address)),
            ("Telephone", person.Phone ?? ""),
            ("E-mail", string.IsNullOrWhiteSpace(person.Email) ? null : person.Email),
        ]);
    }

    private static string Count(ReceiptPaperModel model)
    {
        var objects = model.Keepsakes.Sum(k => k.Count);
        var numbers = model.Keepsakes.Count;
        return (numbers, objects) switch
        {
            (1, 1) => "One keepsake",
            (_, _) when numbers == objects => model.Format.Number(numbers) + " keepsakes",
            (1, _) => $"One entry, {model.Format.Number(objects)} objects in all",
            _ => $"{model.Format.Number(numbers)} entries, {model.Format.Number(objects)} objects in all",
        };
    }

    private static IReadOnlyList<PaperCell> Row(PaperFlow flow, ReceiptPaperKeepsake keepsake, PaperFormat format)
    {
        var (small, strong, label) = (flow.Type.Small, flow.Type.SmallStrong, flow.Type.Label);
        var count = keepsake.Count == 1 ? "1 object" : format.Number(keepsake.Count) + " objects";
        return
        [
            new([(keepsake.ThumbnailJpeg is null ? "no photograph" : "", label)]) { Jpeg = keepsake.ThumbnailJpeg, Alt = $"Photograph of {keepsake.EntryNumber}, {keepsake.Kind}" },
            new([(keepsake.EntryNumber, strong), (count, small), (keepsake.MassG is { } mass ? format.Grams(mass) : "not weighed", small)]),
            new([(keepsake.Kind, strong), (keepsake.Description, small), (keepsake.Came, small), .. keepsake.Since is { } since ? [(since, strong)] : Array.Empty<(string, PaperStyle)>()]),
            new([(keepsake.Condition.Length > 0 ? keepsake.Condition : "Condition not yet noted", small), (keepsake.Completeness, small)]),
            new([(keepsake.Permission, small), .. keepsake.Overruled is { } why ? [(why, strong)] : Array.Empty<(string, PaperStyle)>(), (keepsake.Requirements ?? "", small)]),
        ];
    }

    private static void Agreed(PaperFlow flow, ReceiptPaperModel model)
    {
        flow.Heading("What we have agreed");
        flow.Pairs(Measure.Mm(32),
        [
            ("The owner's wishes", model.OwnersRequirements),
            ("To be returned by", model.ReturnBy is { } day ? model.Format.Day(day) : ""),
            ("Insurance", model.Insurance),
            ("Note", string.IsNullOrWhiteSpace(model.Note) ? null : model.Note),
        ]);
        flow.Space(4);
        flow.Text(model.Terms ?? Terms(model.Studio), flow.Type.Text);
    }

    private static string Terms(PaperLetterhead studio)
    {
        var ask = (studio.Phone, studio.Email) switch
        {
            ({ Length: > 0 } phone, { Length: > 0 } email) => $"{phone} or {email}",
            ({ Length: > 0 } phone, _) => phone,
            (_, { Length: > 0 } email) => email,
            _ => studio.StudioName,
        };
        return "The keepsakes stay yours. We look after them as we would our own, keep each under its number, and do with them only what is written here. " +
            $"Nothing is ever disposed of without the family's word. To ask after them or to change what you have allowed, name the entry number to {ask}.";
    }

    private static void Signatures(PaperFlow flow, ReceiptPaperModel model)
    {
        flow.Space(8);
        flow.Text("The list above is right, and this is what we have agreed. Name and signature:", flow.Type.Strong);
        flow.Signatures(Measure.Mm(13), (1.3, model.Depositor is null ? "Owner" : "Owner or depositor"), (0.5, "Date"), (1.3, "For the studio"), (0.5, "Date"));
        flow.Space(4);
        flow.Text("Three copies: one for you, one for our file, one with the keepsakes.", flow.Type.Label);
    }
}
