using Studio.Clock;
using Studio.Commissions;
using Studio.Drawing;
using Studio.Engine;
using Studio.Pieces;
using Studio.Shell;

namespace Studio.Shelf;

/// <summary>The shelf at one moment, pieces in the order in which they need hands.</summary>
public sealed record ShelfView
{
    public required DateTime Now { get; init; }

    /// <summary>Pieces that stand on the boards.</summary>
    public required IReadOnlyList<Standee> Pieces { get; init; }

    /// <summary>Pieces that wait for a keepsake, a deposit or a yes.</summary>
    public required IReadOnlyList<WaitingPiece> Waiting { get; init; }

    /// <summary>The one large sentence.</summary>
    public required ShelfLead Lead { get; init; }

    /// <summary>Hands needed today, in order, with expected minutes.</summary>
    public required IReadOnlyList<Standee> Today { get; init; }

    /// <summary>Expected minutes of today together [min].</summary>
    public double TodayMinutes => Today.Sum(s => s.Next.Minutes);

    public required bool Cut { get; init; }

    internal static ShelfView Of(ShelfRows rows, DateTime now, TimeZoneInfo zone)
    {
        var stood = rows.Pieces.Where(p => p.Stage != Making.Drawn || p.Stands is Standing.Agreed or Standing.Making)
            .Select(p => Standee.Of(p, rows, now, zone)).Order(HandsFirst.Order).ToList();
        var today = stood.Where(s => s.Next.Urgency <= Urgency.Today).ToList();
        return new()
        {
            Now = now,
            Pieces = stood,
            Waiting = [.. rows.Pieces.Where(p => p.Stage == Making.Drawn).Select(WaitingPiece.Of).OfType<WaitingPiece>()],
            Lead = ShelfLead.Of(stood, now, zone),
            Today = today,
            Cut = rows.Cut,
        };
    }
}

/// <summary>A piece on the shelf.</summary>
public sealed record Standee
{
    // a carrier needs its days
    private const int SoonDays = 3;

    public required ShelfPiece Piece { get; init; }

    public required NextAct Next { get; init; }

    public required SectionView? Section { get; init; }

    /// <summary>"base curing, liquid until 12:30"; empty before the first pour.</summary>
    public required string Curing { get; init; }

    public required IReadOnlyList<Finding> Findings { get; init; }

    internal static Standee Of(ShelfPiece piece, ShelfRows rows, DateTime now, TimeZoneInfo zone)
    {
        var pours = rows.Pours[piece.Id].OrderBy(p => p.Order).ToList();
        var layers = rows.Layers[piece.Id].ToList();
        var times = PieceClock.Of(
            new ClockInput
            {
                Stage = piece.Stage,
                Layers = [.. layers.Select(l => new ClockLayer(l.Order, l.Name) { Wants = [.. rows.Wants[(piece.Id, l.Order)]] })],
                Pours = [.. pours.Select(p => rows.Cures.Told(new(p.Id, p.Order, p.Name, p.StartedAt, p.Sheet) { Kinetics = p.Kinetics }, p.ResinId, p.Lot, p.Foretold))],
                Room = rows.Rooms.GetValueOrDefault(piece.StandsIn) ?? new ClockRoom([]),
                DemouldedAt = piece.DemouldedAt,
                FinishMinutes = piece.Tasks.Sum(t => t.Minutes),
            },
            now, zone);
        return new()
        {
            Piece = piece,
            Next = piece.Stage == Making.Finished ? GoesHome(piece, times.Next, now, zone) : WaitingPiece.Of(piece) is { } waits ? times.Next with { Kind = ActKind.WaitOthers, Words = waits.Words, Urgency = Urgency.Waiting, Minutes = 0 } : times.Next,
            Section = SectionView.For(piece.Mould.Spec, [.. Poured(pours, times), .. Planned(layers, pours)], piece.Former, asStands: piece.Stage is not (Making.Demoulded or Making.Finished), toleranceMm: SectionView.SmallMm),
            Curing = string.Join("; ", times.Layers.Where(l => l.Curing).Select(l => $"{l.Name} {l.Words}")),
            Findings = times.Findings,
        };
    }

    // nothing is left at the bench, and hands are needed all the same: it has to be packed and handed over
    // once its commission is ready: another piece may be open, or this one finished before its full cure
    private static NextAct GoesHome(ShelfPiece piece, NextAct done, DateTime now, TimeZoneInfo zone)
    {
        if (piece.Stands != Standing.Ready)
        {
            return done with { Words = "Finished; its commission is not ready to go home." };
        }

        var today = DateOnly.FromDateTime(Say.Local(now, zone));
        var act = done with { Words = "Finished: pack it, and let it go home.", Urgency = Urgency.Whenever };
        return piece.NeededBy is not { } day ? act : act with
        {
            Words = $"Finished: pack it, and let it go home. They need it {Say.Day(day, today)}.",
            Urgency = day < today ? Urgency.Overdue : day.DayNumber - today.DayNumber <= SoonDays ? Urgency.Now : Urgency.Whenever,
        };
    }

    private static IEnumerable<SectionLayer> Poured(List<ShelfPour> pours, PieceTimes times) =>
        pours.Select(p => new SectionLayer(p.Name, p.FromMm, p.ToMm, p.Colour, times.Layers.Any(l => l.PourId == p.Id && l.Curing) ? LayerState.Curing : LayerState.Poured, Key: p.Order));

    // what is still to pour is hinted at where its height is written down; a height that must be computed from millilitres is left to the piece's page
    private static IEnumerable<SectionLayer> Planned(List<ShelfLayer> layers, List<ShelfPour> pours)
    {
        var from = pours.Count > 0 ? pours.Max(p => p.ToMm) : 0;
        foreach (var layer in layers.Where(l => pours.TrueForAll(p => p.Order != l.Order)))
        {
            if ((layer.ToMm ?? from + layer.ThicknessMm) is not { } to)
            {
                yield break;
            }

            yield return new SectionLayer(layer.Name, from, to, layer.Colour, LayerState.Planned, Key: layer.Order);
            from = to;
        }
    }
}

/// <summary>A piece that cannot begin yet, and what it waits for.</summary>
public sealed record WaitingPiece(ShelfPiece Piece, string For, string Words)
{
    internal static WaitingPiece? Of(ShelfPiece piece) => piece switch
    {
        { Stage: not Making.Drawn } => null,
        { Stands: Standing.Quoted } => new(piece, "their answer", "Waits for their answer to the quote."),
        { Deposit: false, Keepsakes: 0 } => new(piece, "deposit and keepsakes", "Waits for the deposit and the keepsakes."),
        { Deposit: false } => new(piece, "the deposit", "Waits for the deposit."),
        { Keepsakes: 0 } => new(piece, "the keepsakes", "Waits for the keepsakes."),
        _ => null,
    };
}

/// <summary>The order of the shelf: overdue and closing windows first, then ready now, then soonest.</summary>
internal sealed class HandsFirst : IComparer<Standee>
{
    internal static HandsFirst Order { get; } = new();

    public int Compare(Standee? x, Standee? y) => Key(x!).CompareTo(Key(y!));

    private static (Urgency, DateTime, DateTime, DateOnly, int) Key(Standee s)
    {
        var next = s.Next;

        // what is overdue longest comes first; what is ready, by its closing time; what waits, by when it is ready
        var by = next.Urgency switch
        {
            Urgency.Overdue => next.Since,
            Urgency.Closing or Urgency.Now => next.Until,
            _ => next.From,
        };
        return (next.Urgency, by ?? DateTime.MaxValue, next.Since ?? DateTime.MaxValue, s.Piece.NeededBy ?? DateOnly.MaxValue, s.Piece.Id);
    }
}
