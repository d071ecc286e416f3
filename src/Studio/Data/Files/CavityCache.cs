using Studio.Engine;
using Studio.Engine.Meshes;

namespace Studio.Data.Files;

/// <summary>Cavities that were read lately, the last used first; each is read once, however many pages ask at the same time.</summary>
internal sealed class CavityCache
{
    private const int MostKept = 24;
    private const long MostBytes = 400L * 1024 * 1024;

    private readonly Lock gate = new();
    private readonly LinkedList<Kept> kept = new();

    /// <summary>The cavity, read now or earlier. A file that cannot be opened is asked for again next time; one that was refused is not.</summary>
    public Outcome<Cavity> Get(string stored, MeshSource source, Func<(byte[]? Bytes, string? Trouble)> open)
    {
        var entry = Find(stored, source, open);
        var outcome = entry.Read.Value;
        if (outcome is null)
        {
            Drop(entry);
            return Outcome<Cavity>.Refused([new InputError("mould.file", entry.Trouble ?? "The mesh file cannot be opened.")]);
        }

        Trim();
        return outcome;
    }

    private Kept Find(string stored, MeshSource source, Func<(byte[]? Bytes, string? Trouble)> open)
    {
        lock (gate)
        {
            var found = kept.FirstOrDefault(k => k.Stored == stored && k.Source == source) ?? new Kept(stored, source, open);
            kept.Remove(found);
            kept.AddFirst(found);
            return found;
        }
    }

    private void Drop(Kept entry)
    {
        lock (gate)
        {
            kept.Remove(entry);
        }
    }

    // the newest stays even when it is larger than all that may be kept
    private void Trim()
    {
        lock (gate)
        {
            while (kept.Count > MostKept || (kept.Count > 1 && kept.Sum(k => k.Bytes) > MostBytes))
            {
                kept.RemoveLast();
            }
        }
    }

    private sealed class Kept
    {
        public Kept(string stored, MeshSource source, Func<(byte[]? Bytes, string? Trouble)> open)
        {
            (Stored, Source) = (stored, source);
            Read = new(() =>
            {
                var (bytes, trouble) = open();
                Trouble = trouble;
                return bytes is null ? null : Cavity.Read(bytes, source);
            });
        }

        public string Stored { get; }

        public MeshSource Source { get; }

        public Lazy<Outcome<Cavity>?> Read { get; }

        public string? Trouble { get; private set; }

        public long Bytes => Read is { IsValueCreated: true, Value: { Ok: true } made } ? (made.Value.Mesh.Coordinates.LongLength * sizeof(double)) + (made.Value.Mesh.Corners.LongLength * sizeof(int)) : 0;
    }
}
