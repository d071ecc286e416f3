namespace Studio.SignIn;

/// <summary>
/// How fast passwords may be tried. Three wrong ones cost nothing; after that each doubles the wait, to a quarter of an hour, for this person
/// from this place alone. Over all places together the same begins after twenty; a network the person has signed in from counts by itself,
/// so that strangers who guess never shut out the one at their own bench. Kept in memory: a restart forgets it.
/// </summary>
public sealed class Tries(TimeProvider clock)
{
    /// <summary>Wrong tries from one place before the first wait.</summary>
    public const int FreeHere = 3;

    /// <summary>Wrong tries from everywhere before the first wait.</summary>
    public const int FreeEverywhere = 20;

    private const int Most = 20_000;

    private static readonly TimeSpan LongestWait = TimeSpan.FromMinutes(15);
    private static readonly TimeSpan Forgotten = TimeSpan.FromDays(1);

    private readonly Lock turn = new();
    private readonly Dictionary<(string Person, string Place), Count> counts = [];

    private sealed record Count(int Wrong, DateTime Until, DateTime Last);

    /// <summary>The wait after so many wrong tries in a row.</summary>
    /// <param name="wrong">How many, this one included.</param>
    /// <param name="free">How many cost nothing.</param>
    public static TimeSpan Wait(int wrong, int free) =>
        wrong < free ? TimeSpan.Zero : TimeSpan.FromSeconds(Math.Min(LongestWait.TotalSeconds, Math.Pow(2, Math.Min(wrong - free, 20))));

    /// <summary>
    /// Whether this try may be looked at. It counts as wrong until <see cref="Right"/> says otherwise, so that many at once get no more
    /// answers than one after the other would.
    /// </summary>
    /// <param name="person">The e-mail that was typed, whoever's it is.</param>
    /// <param name="here">The place it comes from, exactly.</param>
    /// <param name="network">Its network, where the person has signed in from it before; else null.</param>
    public bool Begin(string person, string here, string? network)
    {
        var now = clock.GetUtcNow().UtcDateTime;
        lock (turn)
        {
            var keys = Keys(person, here, network);
            if (Array.Exists(keys, k => counts.TryGetValue(k.Key, out var count) && now < count.Until))
            {
                return false;
            }

            foreach (var (key, free) in keys)
            {
                var wrong = counts.TryGetValue(key, out var count) && now - count.Last < Forgotten ? count.Wrong + 1 : 1;
                counts[key] = new(wrong, now + Wait(wrong, free), now);
            }

            Thin(now);
            return true;
        }
    }

    /// <summary>The try was right: this place begins afresh; what others tried elsewhere still counts.</summary>
    public void Right(string person, string here, string? network)
    {
        lock (turn)
        {
            var keys = Keys(person, here, network);
            counts.Remove(keys[0].Key);
            if (counts.TryGetValue(keys[1].Key, out var count))
            {
                counts[keys[1].Key] = count with { Wrong = count.Wrong - 1, Until = DateTime.MinValue };
            }
        }
    }

    private static ((string Person, string Place) Key, int Free)[] Keys(string person, string here, string? network) =>
        [((person, "here " + here), FreeHere), ((person, network is null ? "everywhere" : "known " + network), FreeEverywhere)];

    // somebody who tries thousands of e-mails must not fill the memory: the longest quiet go first
    private void Thin(DateTime now)
    {
        if (counts.Count <= Most)
        {
            return;
        }

        foreach (var key in counts.Where(c => now - c.Value.Last > Forgotten).Select(c => c.Key).ToList())
        {
            counts.Remove(key);
        }

        foreach (var key in counts.OrderBy(c => c.Value.Until).ThenBy(c => c.Value.Last).Select(c => c.Key).Take(Math.Max(0, counts.Count - (Most / 2))).ToList())
        {
            counts.Remove(key);
        }
    }
}
