using Studio.Engine.Custody;
using Studio.Papers;

namespace Studio.Keepsakes;

/// <summary>What the paper says that goes home with a family's things.</summary>
public sealed record ReturnPaperModel
{
    public required PaperLetterhead Studio { get; init; }

    public required PaperFormat Format { get; init; }

    /// <summary>The commission's number.</summary>
    public required string Commission { get; init; }

    public string Remembers { get; init; } = "";

    public required PaperPerson Family { get; init; }

    /// <summary>Who takes it.</summary>
    public required string Whom { get; init; }

    /// <summary>How the things are packed; empty where nobody said.</summary>
    public string Packing { get; init; } = "";

    public required DateTime WrittenUtc { get; init; }

    /// <summary>Every keepsake that came in, in that order.</summary>
    public required IReadOnlyList<ReturnPaperRow> Rows { get; init; }

    /// <summary>Castings made for them that were with the studio.</summary>
    public IReadOnlyList<ReturnPaperPiece> Pieces { get; init; } = [];
}

/// <summary>A casting made for them.</summary>
/// <param name="Goes">True where it is in this parcel.</param>
/// <param name="Words">How far it is.</param>
public sealed record ReturnPaperPiece(string Name, bool Goes, string Words);

/// <summary>One keepsake: where all of it is after this parcel.</summary>
/// <param name="Now">With this parcel gone.</param>
/// <param name="Parcel">What of it is in this parcel; null for nothing.</param>
/// <param name="Staying">Pieces that do not go to the family: what is cast into one of them stays with the studio.</param>
public sealed record ReturnPaperRow(string EntryNumber, string Description, CustodyState Now, CustodyAmount? Parcel, IReadOnlySet<int> Staying)
{
    /// <summary>True while something of it is with the studio.</summary>
    public bool Remains => Now.Balance.InHand || Stays is not null;

    /// <summary>What of it is cast into a piece that does not go; null for nothing.</summary>
    public CustodyAmount? Stays => Cast(stays: true);

    /// <summary>What of it is in the piece that goes; null for nothing.</summary>
    public CustodyAmount? InPiece => Cast(stays: false);

    private CustodyAmount? Cast(bool stays) => Now.SetIn.Where(s => !s.Copy && stays == (s.PieceId is { } p && Staying.Contains(p))).Select(s => s.Amount).ToList() is { Count: > 0 } sets
        ? new(sets.Sum(a => a.Count), sets.TrueForAll(a => a.MassG is not null) ? sets.Sum(a => a.MassG) : null)
        : null;

    /// <summary>What came in and is neither in a piece nor back: 0 where everything is accounted for [pieces].</summary>
    public int DifferenceCount => Now.Balance is var b ? b.CameIn.Count + b.Divided - b.SetIn.Count - b.Returned.Count : 0;

    /// <summary>The same by the scale [g]; null where something of it was never weighed.</summary>
    public double? DifferenceG => Now.Balance is { CameIn.MassG: { } came, SetIn.MassG: { } set, Returned.MassG: { } back } ? came - set - back : null;
}

/// <summary>The paper that lies in the parcel: what came in, what is in the piece, what goes home, and whether anything remains.</summary>
public static class ReturnPaper
{
    private static readonly IReadOnlyList<PaperColumn> Columns =
    [
        new("Number", 1.15), new("What it is", 1.6), new("Came in", 0.9), new("In the piece", 0.9), new("With this parcel", 0.95), new("Difference", 1.1), new("Packed", 0.62), new("Received", 0.68),
    ];

    /// <summary>The PDF.</summary>
    public static byte[] Create(ReturnPaperModel model, PaperSize size)
    {
        ArgumentNullException.ThrowIfNull(model);
        return PaperFlow.Render(
            new PaperSetup($"Going home {model.Commission} for {model.Family.Name}", size, PaperType.Work(), model.Format.Language, model.Studio.StudioName,
                $"{model.Studio.StudioName} · Going home · Commission {model.Commission}", model.WrittenUtc)
            { SideMm = 18 },
            flow =>
            {
                flow.Letterhead(model.Studio);
                flow.Title("Going home");
                if (model.Remembers.Length > 0)
                {
                    flow.Text("In memory of " + model.Remembers, flow.Type.Text);
                }

                flow.Space(8);
                flow.Pairs(Measure.Mm(32),
                [
                    ("For", string.Join(", ", [model.Family.Name, .. model.Family.Address])),
                    ("Commission", model.Commission),
                    ("Written", model.Format.FullMoment(model.WrittenUtc)),
                    ("Taken by, or sent to", model.Whom),
                    ("Packed", model.Packing),
                ]);
                flow.Heading("Everything that came in");
                flow.Table(Columns, [.. model.Rows.Select(r => Row(flow, r, model.Format))]);
                flow.Space(6);
                foreach (var piece in model.Pieces.Where(p => p.Goes))
                {
                    flow.Text($"\u2610  With this parcel goes the piece itself: {piece.Name}.", flow.Type.Strong);
                }

                flow.Keep(() =>
                {
                    foreach (var line in Remains(model.Rows, model.Format, model.Pieces))
                    {
                        flow.Text(line, flow.Type.Strong);
                    }

                    flow.Space(8);
                    flow.Text("I have received what is ticked under “Received”. Name and signature:", flow.Type.Text);
                    flow.Signatures(Measure.Mm(13), (1.3, "For the family"), (0.5, "Date"), (1.3, "For the studio"), (0.5, "Date"));
                });
            });
    }

    /// <summary>What remains with the studio, in whole sentences; that nothing does only where the log says so of every keepsake.</summary>
    public static IReadOnlyList<string> Remains(IReadOnlyList<ReturnPaperRow> rows, PaperFormat format, IReadOnlyList<ReturnPaperPiece> pieces)
    {
        ArgumentNullException.ThrowIfNull(rows);
        ArgumentNullException.ThrowIfNull(format);
        var here = rows.Where(r => r.Remains).ToList();
        string[] made = [.. pieces.Where(p => !p.Goes).Select(p => $"The piece made for you, {p.Name}: {p.Words}.")];
        return here.Count == 0 && made.Length == 0
            ? ["Nothing of theirs remains with us."]
            : ["There remains with us, not in this parcel:", .. made, .. here.SelectMany(r => Here(r, format))];
    }

    private static IEnumerable<string> Here(ReturnPaperRow r, PaperFormat format)
    {
        if (r.Now.Balance.InHand)
        {
            yield return $"{r.EntryNumber}, {r.Description}: {Amount(r.Now.Balance.Held, format)}{(r.Now.Place.Length > 0 ? $" ({r.Now.Place})" : "")}.";
        }

        if (r.Stays is { } stays)
        {
            yield return $"{r.EntryNumber}, {r.Description}: {Amount(stays, format)}, cast into a piece that does not go to you.";
        }
    }

    private static IReadOnlyList<PaperCell> Row(PaperFlow flow, ReturnPaperRow row, PaperFormat format)
    {
        var (small, strong) = (flow.Type.Small, flow.Type.SmallStrong);
        var b = row.Now.Balance;
        var copies = row.Now.SetIn.Count(s => s.Copy);
        return
        [
            new([(row.EntryNumber, strong)]),
            new([(row.Description, small), .. Elsewhere(row, format).Select(w => (w, small))]),
            new([(Amount(b.CameIn, format), small)]),
            new([(row.InPiece is { } inside ? Amount(inside, format) : copies > 0 ? "a copy" : "nothing", small)]),
            new([(row.Parcel is { } p ? Amount(p, format) : "nothing", strong)]),
            new([(Difference(row, format), small)]),
            new([("\u2610", small)]),
            new([(row.Parcel is null ? "" : "\u2610", small)]),
        ];
    }

    // what is neither in the piece nor in this parcel, and why
    private static IEnumerable<string> Elsewhere(ReturnPaperRow row, PaperFormat format)
    {
        var b = row.Now.Balance;
        var earlier = new CustodyAmount(b.Returned.Count - (row.Parcel?.Count ?? 0), b.Returned.MassG is { } all ? all - (row.Parcel?.MassG ?? 0) : null);
        if (earlier.Count > 0 || earlier.MassG > CustodyLedger.ScaleSlackG)
        {
            yield return $"Went back before: {Amount(earlier, format)}.";
        }

        if (row.Stays is { } stays)
        {
            yield return $"In a piece that does not go to you: {Amount(stays, format)}.";
        }

        if (b.Divided > 0)
        {
            yield return $"Divided into {format.Number(b.Divided)} more pieces.";
        }

        if (!IsNothing(b.Used))
        {
            yield return $"Used in a test: {Amount(b.Used, format)}.";
        }

        if (!IsNothing(b.Lost))
        {
            yield return $"Lost: {Amount(b.Lost, format)}.";
        }
    }

    private static string Difference(ReturnPaperRow row, PaperFormat format) => (row.DifferenceCount, row.DifferenceG) switch
    {
        (0, null) when row.Now.Balance is { CameIn.MassG: null, SetIn.MassG: null or 0, Returned.MassG: null or 0 } => "none",
        (0, null) => "none in number; not all of it was weighed",
        (0, { } g) when Math.Abs(g) <= CustodyLedger.ScaleSlackG => "none",
        (0, { } g) => format.Grams(g),
        (var n, _) when row.Now.Balance.Held.Count == n => $"{format.Number(n)}, with us",
        (var n, _) when row.Now.Balance.Held.Count > 0 => $"{format.Number(n)}, of which {format.Number(row.Now.Balance.Held.Count)} with us",
        (var n, _) => format.Number(n),
    };

    private static bool IsNothing(CustodyAmount a) => a is { Count: 0, MassG: 0 };

    private static string Amount(CustodyAmount a, PaperFormat format) => (a.Count, a.MassG) switch
    {
        (0, null) => "a part, not weighed",
        (0, 0) => "nothing",
        (0, { } g) => format.Grams(g),
        (var n, null or 0) => format.Number(n),
        (var n, { } g) => $"{format.Number(n)}, {format.Grams(g)}",
    };
}
