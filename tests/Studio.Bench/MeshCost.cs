using System.Buffers.Binary;
using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using Studio.Engine.Meshes;

namespace Studio.Bench.Tools;

/// <summary>A mesh of 1.3 million facets: read, found closed, its volumes tabled; against one pass over the same memory and one plain read of the file.</summary>
internal static class MeshCost
{
    private const int Around = 1000;
    private const int Across = 650;

    private static readonly MeshSource Source = new("cavity.stl", "mm", "+z");

    public static async Task<int> RunAsync()
    {
        var file = Path.Combine(Directory.CreateTempSubdirectory("studio-mesh-").FullName, "cavity.stl");
        try
        {
            await File.WriteAllBytesAsync(file, WavyTorus());
            await MemoryAsync(file);
            await TimesAsync(file);
            return 0;
        }
        finally
        {
            Directory.Delete(Path.GetDirectoryName(file)!, recursive: true);
        }
    }

    /// <summary>In a process of its own, so that its peak is this reading's.</summary>
    public static async Task<int> OnceAsync(string file)
    {
        // the runtime itself, warmed on a small mesh, is not the mesh's
        Read(WavyTorus(40, 20));
        GC.Collect();
        var before = PeakBytes();
        var bytes = await File.ReadAllBytesAsync(file);
        var table = Read(bytes);
        var peak = PeakBytes();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Memory: the file has {bytes.Length / 1e6:0.0} MB; at its peak the process held {peak / 1e6:0.0} MB, {(peak - before) / 1e6:0.0} MB more than before, {(peak - before) / (double)bytes.Length:0.00} times the file, itself included (aim at most 4); {table.WholeMm3 / 1000:0.000} ml"));
        return 0;
    }

    private static async Task MemoryAsync(string file)
    {
        using var other = Process.Start(new ProcessStartInfo(Environment.ProcessPath!, ["mesh-once", file]))!;
        await other.WaitForExitAsync();
    }

    private static async Task TimesAsync(string file)
    {
        var bytes = await File.ReadAllBytesAsync(file);
        var mesh = ClosedMesh.Read(bytes, Source, "mould.file").Mesh!;
        var table = VolumeTable.Of(mesh);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Mesh: {mesh.TriangleCount} facets, {mesh.VertexCount} vertices, {bytes.Length / 1e6:0.0} MB, {table.WholeMm3 / 1000:0.000} ml"));
        Task Ours() => Task.FromResult(Read(bytes));
        await Measure.CompareAsync("Mesh read, closing check and table", "all three", Ours, "one pass over the same memory", () => Task.FromResult(Pass(bytes)), null, 8);
        await Measure.CompareAsync("The same", "all three", Ours, "one plain read of the file", () => Task.FromResult(File.ReadAllBytes(file)), null, 8);
        await Measure.CompareAsync("of it, reading and closing check", "both", () => Task.FromResult(ClosedMesh.Read(bytes, Source, "mould.file")), "table", () => Task.FromResult(VolumeTable.Of(mesh)), null, 8);
        await Measure.CompareAsync("Volume below a height", "one question", () => Task.FromResult(table.VolumeMm3(table.HighMm / 3)), "one pass over the same memory", () => Task.FromResult(Pass(bytes)), 3, 40);
        await Measure.CompareAsync("Level from volume (aim at most 1 ms)", "one question", () => Task.FromResult(table.HeightMm(table.WholeMm3 / 3)), "one pass over the same memory", () => Task.FromResult(Pass(bytes)), null, 40);
        await Measure.CompareAsync("Does it pass through itself", "search", () => Task.FromResult(Crossing.Find(mesh, 1e-3).Pairs), "reading and closing check", () => Task.FromResult(ClosedMesh.Read(bytes, Source, "mould.file")), null, 4);
    }

    private static VolumeTable Read(byte[] bytes) => VolumeTable.Of(ClosedMesh.Read(bytes, Source, "mould.file").Mesh!);

    private static ulong Pass(byte[] bytes)
    {
        var sum = 0ul;
        foreach (var word in MemoryMarshal.Cast<byte, ulong>(bytes))
        {
            sum += word;
        }

        return sum;
    }

    private static long PeakBytes() => 1024 * long.Parse(
        File.ReadLines("/proc/self/status").First(l => l.StartsWith("VmHWM", StringComparison.Ordinal)).Split(' ', StringSplitOptions.RemoveEmptyEntries)[1], CultureInfo.InvariantCulture);

    // tilted and rippled, so that hardly two vertices stand equally high: the most levels a mesh can have
    private static byte[] WavyTorus(int around = Around, int across = Across)
    {
        var bytes = new byte[84 + (100 * around * across)];
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(80), 2 * around * across);
        var at = 84;
        for (var i = 0; i < around; i++)
        {
            for (var j = 0; j < across; j++)
            {
                Facet(bytes.AsSpan(at, 50), [At(i, j), At(i + 1, j), At(i + 1, j + 1)]);
                Facet(bytes.AsSpan(at + 50, 50), [At(i, j), At(i + 1, j + 1), At(i, j + 1)]);
                at += 100;
            }
        }

        return bytes;

        Point3 At(int i, int j)
        {
            var (u, v) = (2 * Math.PI * (i % around) / around, 2 * Math.PI * (j % across) / across);
            var tube = 25 + Math.Sin(7 * u) + Math.Cos(5 * v);
            var (r, z) = (60 + (tube * Math.Cos(v)), tube * Math.Sin(v));
            return new Point3((r * Math.Cos(u) * 0.8) - (z * 0.6), r * Math.Sin(u), (r * Math.Cos(u) * 0.6) + (z * 0.8));
        }
    }

    private static void Facet(Span<byte> to, ReadOnlySpan<Point3> corners)
    {
        for (var k = 0; k < 3; k++)
        {
            BinaryPrimitives.WriteSingleLittleEndian(to[(12 + (12 * k))..], (float)corners[k].X);
            BinaryPrimitives.WriteSingleLittleEndian(to[(16 + (12 * k))..], (float)corners[k].Y);
            BinaryPrimitives.WriteSingleLittleEndian(to[(20 + (12 * k))..], (float)corners[k].Z);
        }
    }
}
