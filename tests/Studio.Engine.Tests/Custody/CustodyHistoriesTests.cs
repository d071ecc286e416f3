using Studio.Engine.Custody;

namespace Studio.Engine.Tests.Custody;

/// <summary>
/// Random histories against things that really move: each thing is an object with its grams and its place, and nothing in it knows of a
/// ledger. What the ledger says must be what a hand would count and a scale would show, at every moment.
/// </summary>
public sealed class CustodyHistoriesTests
{
    private const int Histories = 1_000_000;
    private const int MostActs = 9;

    private static readonly string[] Permits = [.. Permissions.All.Select(p => p.Key), "never-heard-of"];
    private static readonly string[] Materials = ["ashes", "brass", "dried-flower", "photograph-only-copy", "battery", "never-heard-of"];
    private static readonly string[] Acts =
    [
        CustodyKind.SetIn, CustodyKind.SetIn, CustodyKind.Returned, CustodyKind.Used, CustodyKind.Lost, CustodyKind.Weighed, CustodyKind.Divided, CustodyKind.TakenOut,
        CustodyKind.Undone, CustodyKind.Copied, CustodyKind.CopySetIn, CustodyKind.Moved,
    ];

    [Fact]
    [Trait("Slow", "draws")]
    public void A_million_random_histories_add_up_at_every_moment()
    {
        var wrong = new System.Collections.Concurrent.ConcurrentQueue<string>();
        var kept = 0L;
        Parallel.For(0, Histories, seed =>
        {
            Interlocked.Add(ref kept, One(seed, wrong.Enqueue));
        });
        wrong.Take(5).ShouldBeEmpty();
        kept.ShouldBeGreaterThan(2L * Histories, "acts must be allowed often enough to prove something");
    }

    [Fact]
    public void A_thing_that_is_nowhere_is_seen()
    {
        // the check itself: a thing vanishes from the drawer, and nobody wrote it down
        var things = new Things(3, 30);
        var entries = new List<CustodyEntry> { new(1, CustodyKind.Received) { Count = 3, MassG = 30 } };
        Differs(things, CustodyLedger.Read(entries)).ShouldBeNull();
        things.Vanish();
        Differs(things, CustodyLedger.Read(entries)).ShouldNotBeNull();
    }

#pragma warning disable CA5394 // a seeded generator makes a history that can be looked at again
    private static int One(int seed, Action<string> wrong)
    {
        var random = new Random(seed);
        var subject = new CustodySubject(Materials[random.Next(Materials.Length)], Permits[random.Next(Permits.Length)])
        {
            PartCount = random.Next(4) == 0 ? random.Next(1, 4) : null,
            PartG = random.Next(4) == 0 ? random.Next(1, 60) : null,
            Overruled = random.Next(3) == 0,
        };
        var (count, weighed) = (random.Next(1, 6), random.Next(3) > 0);
        double grams = random.Next(1, 100);
        var entries = new List<CustodyEntry> { new(1, CustodyKind.Received) { Count = count, MassG = weighed ? grams : null, Place = "drawer" } };
        var things = new Things(count, grams);
        var kept = 0;
        for (var step = 0; step < MostActs; step++)
        {
            var now = CustodyLedger.Read(entries);
            if (Next(random, entries, now, subject, things) is not { } entry)
            {
                continue;
            }

            kept++;
            entries.Add(entry);
            things = things.After(entries);
            var said = CustodyLedger.Read(entries);
            if (Differs(things, said) is { } difference)
            {
                wrong($"history {seed}, entry {entry.Id} ({entry.Kind}): {difference}; {Told(entries)}");
                break;
            }

            if (Permissions.For(subject.Permits) is { ThingMayBeCast: false } && (said.Balance.SetIn.Count > 0 || said.Balance.SetIn.MassG is not 0))
            {
                wrong($"history {seed}: cast against the family's word");
            }

            if (Permissions.For(subject.Permits).MayCast == CastShare.Part && things.All(CustodyKind.SetIn, said.Balance.CameIn.MassG is not null))
            {
                wrong($"history {seed}: all of it is cast where a part is permitted: {Told(entries)}");
            }
        }

        return kept;
    }

    // an act as a person might try it, also one that cannot be: null where the rules refuse it
    private static CustodyEntry? Next(Random random, List<CustodyEntry> entries, CustodyState now, CustodySubject subject, Things things)
    {
        var (id, kind) = (entries.Count + 1, Acts[random.Next(Acts.Length)]);
        switch (kind)
        {
            case CustodyKind.Undone:
                var target = entries[random.Next(entries.Count)];
                return CustodyRules.UndoRefusal(entries, target.Id, subject) is null ? new(id, kind) { RefId = target.Id } : null;
            case CustodyKind.TakenOut:
                return now.SetIn.Count > 0 ? new(id, kind) { RefId = now.SetIn[random.Next(now.SetIn.Count)].EntryId, Place = "bench" } : null;
            case CustodyKind.Weighed:
                return CustodyRules.Refusal(new CustodyAct(kind) { MassG = things.HeldG }, subject, now) is null && things.HeldG > 0.1 ? new(id, kind) { MassG = things.HeldG } : null;
            default:
                var part = random.Next(3) == 0;
                var act = new CustodyAct(kind)
                {
                    Count = part ? 0 : random.Next(0, 7),
                    MassG = random.Next(3) > 0 ? Math.Round(random.NextDouble() * 60, 1) : null,
                    Unweighed = random.Next(2) == 0,
                };
                if (kind is CustodyKind.Moved or CustodyKind.Copied or CustodyKind.CopySetIn)
                {
                    act = new CustodyAct(kind);
                }

                // a scale cannot show more than there is: where nobody knows how much that is, no person could have typed it
                return CustodyRules.Refusal(act, subject, now) is null && !(now.Balance.Held.MassG is null && act.MassG > things.HeldG)
                    ? new(id, kind) { Count = CustodyKind.Leaves(kind) || kind == CustodyKind.Divided ? act.Count : null, MassG = kind == CustodyKind.Divided ? null : act.MassG, PieceId = 1, PourId = id, LayerId = 1, Place = kind == CustodyKind.Moved ? "safe" : "" }
                    : null;
        }
    }
#pragma warning restore CA5394

    private static string Told(List<CustodyEntry> entries) =>
        string.Join(" | ", entries.Select(e => FormattableString.Invariant($"{e.Id} {e.Kind} {e.Count} {e.MassG} {(e.RefId is { } r ? $"of {r}" : "")}").TrimEnd()));

    private static string? Differs(Things things, CustodyState said)
    {
        var b = said.Balance;
        return b switch
        {
            _ when said.Faults.Count > 0 => said.Faults[0].Message,
            _ when !b.PiecesAddUp => "the pieces do not add up",
            _ when b.GramsAddUp == false => $"the grams do not add up: {b}",
            _ when b.Held.Count != things.Count("") => $"{things.Count("")} are in the drawer, {b.Held.Count} are said to be",
            _ when b.SetIn.Count != things.Count(CustodyKind.SetIn) => "what is in pieces differs",
            _ when b.Returned.Count != things.Count(CustodyKind.Returned) => "what went back differs",
            _ when b.Used.Count != things.Count(CustodyKind.Used) => "what was used differs",
            _ when b.Lost.Count != things.Count(CustodyKind.Lost) => "what is lost differs",
            _ when b.Held.MassG is { } g && b.Held.Count > 0 && Math.Abs(g - things.HeldG) > 0.051 + (0.05 * things.Moves) => $"the scale shows {things.HeldG}, {g} are said to be here",
            _ => null,
        };
    }

    /// <summary>Things with grams of their own. What leaves takes as many things, or grams off the pile; nothing here adds or compares as a ledger does.</summary>
    private sealed class Things
    {
        private readonly List<(string Where, int Entry)> things;
        private readonly double cameG;
        private readonly List<(string Where, double Grams, int Entry)> grams = [];

        public Things(int count, double grams)
        {
            things = [.. Enumerable.Repeat(("", 0), count)];
            (cameG, HeldG) = (grams, grams);
        }

        public double HeldG { get; private set; }

        public int Moves { get; private set; }

        public void Vanish() => things.RemoveAt(0);

        public int Count(string where) => things.Count(t => t.Where == where);

        // by number always; by grams where somebody knows what all of it weighed
        public bool All(string where, bool weighed) => things.TrueForAll(t => t.Where == where) || (weighed && grams.Where(g => g.Where == where).Sum(g => g.Grams) >= cameG - 0.04);

        /// <summary>The things after a whole history, from the beginning: what was taken back never happened.</summary>
        public Things After(IReadOnlyList<CustodyEntry> entries)
        {
            var back = entries.Where(e => e.Kind == CustodyKind.Undone).Select(e => e.RefId).ToHashSet();
            var fresh = new Things(entries[0].Count!.Value, cameG);
            foreach (var e in entries.Skip(1).Where(e => e.Kind != CustodyKind.Undone && !back.Contains(e.Id)))
            {
                fresh.Happen(e);
            }

            return fresh;
        }

        private void Happen(CustodyEntry e)
        {
            Moves++;
            switch (e.Kind)
            {
                case CustodyKind.Weighed:
                    HeldG = e.MassG!.Value; // whatever was taken back before it: the scale was looked at then
                    break;
                case CustodyKind.Divided:
                    things.AddRange(Enumerable.Repeat(("", 0), e.Count!.Value));
                    break;
                case CustodyKind.TakenOut:
                    for (var i = 0; i < things.Count; i++)
                    {
                        things[i] = things[i].Entry == e.RefId ? ("", 0) : things[i];
                    }

                    HeldG += grams.Where(g => g.Entry == e.RefId).Sum(g => g.Grams);
                    grams.RemoveAll(g => g.Entry == e.RefId);
                    break;
                case CustodyKind.SetIn or CustodyKind.Returned or CustodyKind.Used or CustodyKind.Lost:
                    for (var (i, left) = (0, e.Count ?? 0); i < things.Count && left > 0; i++)
                    {
                        if (things[i].Where.Length == 0)
                        {
                            things[i] = (e.Kind, e.Id);
                            left--;
                        }
                    }

                    // with the last thing goes all there is, whatever was typed; an unweighed part is a third of the pile
                    var off = Count("") == 0 && e.Count > 0 ? HeldG : e.MassG ?? (HeldG / 3);
                    HeldG = Math.Max(0, HeldG - off);
                    grams.Add((e.Kind, off, e.Id));
                    break;
            }
        }
    }
}
