using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Studio.Data.Files;
using Studio.Engine.Meshes;
using Studio.Shell;

namespace Studio.Moulds;

/// <summary>The mesh of a mould while it is chosen.</summary>
public sealed partial class MeshPart : IDisposable
{
    private const int RedrawBytes = 1_000_000;
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    private CancellationTokenSource? stop;
    private (string Name, long Arrived, long Of)? sending;
    private MeshLook? look;
    private MouldMesh? looked;
    private string refusal = "";
    private bool reading;

    [Parameter, EditorRequired]
    public MouldMesh? Mesh { get; set; }

    [Parameter]
    public EventCallback<MouldMesh> MeshChanged { get; set; }

    [Parameter]
    public string Units { get; set; } = "metric";

    /// <summary>The page's complaint about a field, or null.</summary>
    [Parameter, EditorRequired]
    public Func<string, string?> Edit { get; set; } = default!;

    [Inject]
    private MouldBook Book { get; set; } = default!;

    public void Dispose()
    {
        stop?.Cancel();
        stop?.Dispose();
    }

    protected override async Task OnParametersSetAsync()
    {
        if (Mesh is { } mesh && mesh != looked)
        {
            looked = mesh;
            reading = look is null;
            var read = await Book.LookAsync(mesh);
            (look, reading) = mesh == looked ? (read, false) : (look, reading);
        }
    }

    private static string Megabytes(long bytes) => (bytes / 1e6).ToString("0.0", English) + " MB";

    private string Size(MeshSize size) => $"{Say.Length(size.WidthMm, Units)} × {Say.Length(size.DepthMm, Units)} × {Say.Length(size.HeightMm, Units)} high";

    private async Task ReceiveAsync(InputFileChangeEventArgs chosen)
    {
        var file = chosen.File;
        (refusal, sending) = ("", (file.Name, 0, file.Size));
        stop = new();
        try
        {
            // one byte more than is taken: what is larger is refused by the folder, in its own words
            await using var content = file.OpenReadStream(Math.Max(file.Size, 1));
            var outcome = file.Size > MeshFolder.LargestBytes ? MeshFolder.RefusedForSize : await Book.ReceiveAsync(content, file.Name, Arrived, stop.Token);
            refusal = outcome.Refusal ?? "";
            if (outcome.Mesh is { } mesh)
            {
                look = null;
                await TakeAsync(new(mesh.Stored, mesh.FileName, "", Mesh?.Up ?? MeshSource.Directions[0]));
            }
        }
        catch (OperationCanceledException)
        {
            refusal = "You stopped the transfer.";
        }
        finally
        {
            sending = null;
        }
    }

    private void Arrived(long bytes)
    {
        var shown = sending?.Arrived ?? 0;
        if (sending is { } s && (bytes - shown > RedrawBytes || bytes == s.Of))
        {
            sending = s with { Arrived = bytes };
            _ = InvokeAsync(StateHasChanged);
        }
    }

    private void Stop() => stop?.Cancel();

    private Task TakeAsync(MouldMesh mesh) => MeshChanged.InvokeAsync(mesh);
}
