using Microsoft.EntityFrameworkCore.Diagnostics;
using Studio.Data.Files;

namespace Studio.Data;

/// <summary>A record that names a mesh file; whoever reads it from the database gives it the folder, and it opens the file only when asked.</summary>
public interface IHoldsMesh
{
    MeshFolder? Meshes { get; set; }
}

/// <summary>Gives the mesh folder to every record that names a file, whichever query brought it.</summary>
internal sealed class MeshGiver : IMaterializationInterceptor
{
    public static readonly MeshGiver Instance = new();

    public object InitializedInstance(MaterializationInterceptionData materializationData, object entity)
    {
        if (entity is IHoldsMesh holder)
        {
            holder.Meshes = (materializationData.Context as StudioDb)?.Meshes;
        }

        return entity;
    }
}
