using System.Diagnostics;
using System.Text;

namespace Studio.Engine.Tests.Meshes;

public sealed class MeshFuzzTests
{
    private const int Runs = 100_000;
    private static readonly string[] Numbers = ["nan", "-1e308", "1e-320", "0", "-0", "1e999", "99999999999999999999", "2147483648", "-2147483648", "1,5", "0x1F", "-", "1/0/9", "//", "", "\0", "1e"];

    [Fact]
    [Trait("Slow", "meshes")]
    public void A_hundred_thousand_broken_files_are_read_or_refused_and_nothing_else()
    {
        var seeds = Seeds();
        var (read, slowest, peak) = (0, TimeSpan.Zero, 0L);
        var before = GC.GetTotalMemory(forceFullCollection: true);
        for (var run = 0; run < Runs; run++)
        {
            var (bytes, name) = seeds[run % seeds.Length];
            var mutant = Mutate(bytes, new Random(run), seeds);
            var watch = Stopwatch.GetTimestamp();
            var outcome = Files.Read(mutant, name, "mm", run % 3 == 0 ? "-x" : "+z");
            if (outcome.Ok)
            {
                read++;
                var whole = outcome.Value.Table.WholeMm3;
                double.IsFinite(whole).ShouldBeTrue($"run {run}");
                whole.ShouldBeGreaterThan(0, $"run {run}");
            }
            else
            {
                outcome.Errors.ShouldHaveSingleItem().Message.Length.ShouldBeLessThan(1000);
            }

            slowest = TimeSpan.FromTicks(Math.Max(slowest.Ticks, Stopwatch.GetElapsedTime(watch).Ticks));
            peak = Math.Max(peak, run % 64 == 0 ? GC.GetTotalMemory(forceFullCollection: false) : 0);
        }

        // both must happen, or the mutations say nothing
        read.ShouldBeInRange(Runs / 100, Runs / 2);
        slowest.ShouldBeLessThan(TimeSpan.FromSeconds(5));
        (peak - before).ShouldBeLessThan(256L * 1024 * 1024);
    }

    private static (byte[] Bytes, string Name)[] Seeds()
    {
        var (box, ball, two) = (Solids.Box(0, 0, 0, 10, 20, 30), Solids.Ball(10, 0), Solids.Box(0, 0, 0, 9, 9, 9).With(Solids.Box(2, 2, 2, 3, 3, 3).InsideOut()));
        return
        [
            (Files.Binary(box), "a.stl"), (Files.Ascii(box).Bytes(), "a.stl"), (Files.Obj(box).Bytes(), "a.obj"),
            (Files.Binary(ball), "a.stl"), (Files.Ascii(ball, "G6").Bytes(), "a.stl"), (Files.Obj(two).Bytes(), "a.obj"),
            ("v 0 0 0\nv 1 0 0\nv 1 1 0\nv 0 1 0\nv 0 0 1\nv 1 0 1\nv 1 1 1\nv 0 1 1\nf 4 3 2 1\nf -4/1 -3/1 -2/1 -1/1\nf 1//1 2//1 6//2 5//2\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 \\\n 8\n".Bytes(), "a.obj"),
        ];
    }

    private static byte[] Mutate(byte[] seed, Random random, (byte[] Bytes, string Name)[] seeds)
    {
        var bytes = seed.ToList();
        for (var times = random.Next(1, 4); times > 0; times--)
        {
            var at = random.Next(bytes.Count + 1);
            switch (random.Next(7))
            {
                case 0:
                    Flip(bytes, random);
                    break;
                case 1:
                    bytes.RemoveRange(at, Math.Min(random.Next(bytes.Count + 1), bytes.Count - at));
                    break;
                case 2:
                    var other = seeds[random.Next(seeds.Length)].Bytes;
                    var from = random.Next(other.Length);
                    bytes.InsertRange(at, other.AsSpan(from, random.Next(other.Length - from)).ToArray());
                    break;
                case 3:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(200), bytes.Count - at)));
                    break;
                default:
                    Number(bytes, at, random);
                    break;
            }
        }

        return [.. bytes];
    }

    private static void Flip(List<byte> bytes, Random random)
    {
        for (var k = random.Next(1, 9); k > 0 && bytes.Count > 0; k--)
        {
            bytes[random.Next(bytes.Count)] ^= (byte)(1 << random.Next(8));
        }
    }

    // one word in its place, or in a binary file four bytes of a strange number
    private static void Number(List<byte> bytes, int at, Random random)
    {
        var start = at;
        while (start > 0 && bytes[start - 1] > ' ')
        {
            start--;
        }

        var end = start;
        while (end < bytes.Count && end < start + 12 && bytes[end] > ' ')
        {
            end++;
        }

        var word = random.Next(3) == 0 ? random.Next(-9, 40).ToString(System.Globalization.CultureInfo.InvariantCulture) : Numbers[random.Next(Numbers.Length)];
        bytes.RemoveRange(start, end - start);
        bytes.InsertRange(start, bytes.Contains(0) ? BitConverter.GetBytes(random.Next(4) switch { 0 => float.NaN, 1 => 1e38f, 2 => 1e-40f, _ => (float)random.Next(-30, 30) })[..Math.Min(4, end - start)] : Encoding.UTF8.GetBytes(word));
    }
}
