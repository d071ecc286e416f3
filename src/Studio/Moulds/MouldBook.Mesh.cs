using Studio.Data;
using Studio.Data.Files;
using Studio.Engine;
using Studio.Engine.Meshes;

namespace Studio.Moulds;

/// <summary>Mesh files of moulds: taken in, and looked at before a unit is chosen.</summary>
public sealed partial class MouldBook
{
    private const double SmallestMm = 10;
    private const double LargestMm = 600;

    /// <summary>Takes a file into the mesh folder; nothing is drawn from it until its unit is said.</summary>
    /// <param name="content">The file as it arrives.</param>
    /// <param name="name">The name it came with.</param>
    /// <param name="arrived">Told how many bytes have arrived so far.</param>
    /// <param name="cancel">Stops the transfer.</param>
    public async Task<MeshOutcome> ReceiveAsync(Stream content, string name, Action<long> arrived, CancellationToken cancel)
    {
        await factory.AskAsync();
        return await meshes.AddAsync(content, name, arrived, cancel);
    }

    /// <summary>How a file reads: its size in every unit, or everything that is wrong. Reading a large file takes seconds.</summary>
    public Task<MeshLook> LookAsync(MouldMesh mesh) => Task.Run(() => Look(mesh));

    private MeshLook Look(MouldMesh mesh)
    {
        var units = mesh.Unit.Length > 0 ? MeshSource.Units.Keys.Prepend(mesh.Unit) : MeshSource.Units.Keys;
        IReadOnlyList<InputError> errors = [];
        foreach (var unit in units.Distinct(StringComparer.Ordinal))
        {
            var read = meshes.Cavity(mesh.Stored, mesh.Source with { Unit = unit });
            if (read.Ok)
            {
                return Of(read.Value, MeshSource.Units[unit]);
            }

            errors = errors.Count == 0 ? read.Errors : errors;
        }

        return new() { Errors = errors };
    }

    private static MeshLook Of(Cavity cavity, double readAs)
    {
        var (low, high) = cavity.Mesh.Bounds();
        var size = (high - low) * (1 / readAs);
        return new() { Triangles = cavity.Mesh.TriangleCount, Notes = cavity.Findings, Sizes = [.. MeshSource.Units.Select(u => Size(u.Key, size * u.Value))] };
    }

    private static MeshSize Size(string unit, Point3 mm) =>
        new(unit, mm.X, mm.Y, mm.Z, Math.Max(mm.X, Math.Max(mm.Y, mm.Z)) is >= SmallestMm and <= LargestMm);
}
