using System.Globalization;

namespace Studio.Engine.Custody;

/// <summary>A keepsake's log while it is read, entry by entry.</summary>
internal sealed class CustodyReading
{
    private readonly List<CustodyFault> faults = [];
    private readonly Dictionary<int, CustodySet> sets = [];
    private readonly Dictionary<int, (string Kind, CustodyAmount Amount)> gone = [];

    // what moved unweighed since the scale last told what is here: while there is any, nobody knows what is held
    private readonly HashSet<int> open = [];

    // the last of it left with another weight than was reckoned: the difference comes back with it
    private readonly Dictionary<int, double?> leftOver = [];
    private readonly int cameCount;
    private double? cameG;
    private double? scaleG;
    private double sinceG;
    private int held;
    private int divided;
    private double byDifference;
    private bool copied;
    private bool withdrawn;
    private string place = "";

    public CustodyReading(int cameCount, double? cameG) => (this.cameCount, this.cameG, scaleG, held) = (cameCount, cameG, cameG, cameCount);

    private double? HeldG => open.Count == 0 ? scaleG + sinceG : null;

    // what left unweighed can only have made it less; what came back unweighed leaves nothing to say
    private double? AtMostG => open.All(gone.ContainsKey) ? scaleG + sinceG : null;

    public void Fault(int id, string message) => faults.Add(new(id, message));

    public void Take(CustodyEntry e)
    {
        if (e.Kind is CustodyKind.Weighed or CustodyKind.Divided && held <= 0 && HeldG <= CustodyLedger.ScaleSlackG)
        {
            Fault(e.Id, "It was weighed or divided where nothing of it was here.");
        }

        switch (e.Kind)
        {
            case CustodyKind.Weighed when e.MassG is { } scale:
                Weigh(scale);
                break;
            case CustodyKind.Divided:
                (divided, held) = (divided + (e.Count ?? 0), held + (e.Count ?? 0));
                break;
            case CustodyKind.Copied:
                copied = true;
                break;
            case CustodyKind.CopySetIn:
                sets[e.Id] = new(e.Id, CustodyAmount.Nothing, Copy: true, e.PieceId, e.LayerId, e.PourId);
                break;
            case CustodyKind.TakenOut:
                PutBack(e);
                break;
            case CustodyKind.Withdrawn:
                withdrawn = true;
                break;
        }

        if (CustodyKind.Leaves(e.Kind))
        {
            Leave(e);
        }

        place = e.Place.Length > 0 ? e.Place : place;
    }

    public CustodyState State(int? undoId)
    {
        var balance = new CustodyBalance
        {
            CameIn = new(cameCount, cameG),
            Divided = divided,
            Held = new(held, HeldG),
            SetIn = Sum(CustodyKind.SetIn),
            Returned = Sum(CustodyKind.Returned),
            Used = Sum(CustodyKind.Used),
            Lost = Sum(CustodyKind.Lost),
            ByDifferenceG = byDifference,
            HeldAtMostG = AtMostG,
        };
        return new()
        {
            Balance = balance,
            Place = balance.InHand ? place : "",
            Copied = copied,
            Withdrawn = withdrawn,
            SetIn = [.. sets.Values.OrderBy(s => s.EntryId)],
            UndoId = undoId,
            Faults = faults,
        };
    }

    // the scale is the truth about what is here; what it does not find is told as found by difference
    private void Weigh(double scale)
    {
        if (cameG is null && gone.Values.All(g => g.Amount.MassG is not null))
        {
            // never weighed before, and nothing left unweighed: now we know what came in
            cameG = scale + gone.Values.Sum(g => g.Amount.MassG ?? 0);
        }

        Find(scale);
    }

    // what is here is known from now on; what the log did not expect is a difference
    private void Find(double nowG)
    {
        if (HeldG is { } reckoned)
        {
            byDifference += reckoned - nowG;
        }
        else if (cameG is { } came && gone.Values.All(g => g.Amount.MassG is not null))
        {
            byDifference = came - nowG - gone.Values.Sum(g => g.Amount.MassG ?? 0);
        }

        (scaleG, sinceG) = (nowG, 0);
        open.Clear();
    }

    private void Leave(CustodyEntry e)
    {
        var (count, heldG) = (e.Count ?? 0, HeldG);
        if (count > held)
        {
            Fault(e.Id, string.Create(CultureInfo.InvariantCulture, $"{count} pieces leave where {held} are held."));
        }

        if (e.MassG > AtMostG + CustodyLedger.ScaleSlackG)
        {
            Fault(e.Id, string.Create(CultureInfo.InvariantCulture, $"{e.MassG:0.###} g leave where at most {AtMostG:0.###} g are held."));
        }

        // all that is here leaves: what it weighs is what was here
        var grams = e.MassG ?? (count > 0 && count == held ? heldG : null);
        gone[e.Id] = (e.Kind, new(count, grams));
        held -= count;
        sinceG -= grams ?? 0;
        if (grams is null)
        {
            open.Add(e.Id);
        }

        // nothing left in number is nothing left by the scale
        if (held == 0 && count > 0)
        {
            leftOver[e.Id] = HeldG;
            Find(0);
        }

        if (e.Kind == CustodyKind.SetIn)
        {
            sets[e.Id] = new(e.Id, new(count, grams), Copy: false, e.PieceId, e.LayerId, e.PourId);
        }
    }

    private void PutBack(CustodyEntry e)
    {
        if (e.RefId is not { } id || !sets.Remove(id, out var set))
        {
            Fault(e.Id, "It takes out something that is in no piece.");
            return;
        }

        if (set.Copy)
        {
            return;
        }

        gone.Remove(id);
        held += set.Amount.Count;
        if (leftOver.Remove(id, out var rest))
        {
            byDifference -= rest ?? 0;
            sinceG += rest ?? 0;
            if (rest is null)
            {
                open.Add(e.Id);
            }
        }

        sinceG += set.Amount.MassG ?? 0;
        if (set.Amount.MassG is null && !open.Remove(id))
        {
            // it left unweighed before the last weighing: what is here is not known until the scale is asked again
            open.Add(e.Id);
        }
    }

    private CustodyAmount Sum(string kind)
    {
        var (count, grams) = (0, (double?)0);
        foreach (var (_, amount) in gone.Values.Where(g => g.Kind == kind))
        {
            (count, grams) = (count + amount.Count, grams + amount.MassG);
        }

        return new(count, grams);
    }
}
