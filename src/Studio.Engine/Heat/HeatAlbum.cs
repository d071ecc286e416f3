namespace Studio.Engine.Heat;

/// <summary>Keeps the section's temperatures at the hours that were asked for, by the cubic within a step.</summary>
internal sealed class HeatAlbum
{
    private readonly HeatGrid grid;
    private readonly int[] nodes;
    private readonly (double AtHours, float[] Celsius)[] pages;
    private HeatStage? stage;
    private double lastH;
    private int next;

    public HeatAlbum(HeatInput input, HeatGrid grid)
    {
        this.grid = grid;
        nodes = [.. Enumerable.Range(0, grid.CellsK + 1).SelectMany(k => Enumerable.Range(0, grid.CellsI + 1).Select(i => grid.Node(i, 0, k)))];
        var (from, to) = (input.Layers[0].PouredAtHours, input.UntilHours);
        pages = [.. input.PictureHours.Where(h => h >= from && h <= to).Distinct().Order().Select(h => (h, new float[nodes.Length]))];
    }

    public IReadOnlyList<HeatPicture> Pictures => [.. pages.Take(next).Select(p => new HeatPicture(p.AtHours, p.Celsius))];

    public HeatSection Section(HeatStage filled) => new(
        grid.CellsI + 1,
        grid.CellsK + 1,
        [.. nodes.Select(n => grid.X[n] * 1000)],
        [.. nodes.Select(n => grid.Z[n] * 1000)],
        [.. Enumerable.Range(0, grid.CellsK).SelectMany(k => Enumerable.Range(0, grid.CellsI).Select(i => filled.LayerOf(i, 0, k)))]);

    /// <summary>A pour begins a stage.</summary>
    public void Turn(HeatStage begun, double atH) => (stage, lastH) = (begun, atH);

    /// <summary>A step has ended; a picture at its very end is left to what follows, which may be a pour.</summary>
    public void See(double atH, StageState state)
    {
        for (; next < pages.Length && pages[next].AtHours < atH; next++)
        {
            Take(state, Math.Clamp((pages[next].AtHours - lastH) / (atH - lastH), 0, 1));
        }

        lastH = atH;
    }

    /// <summary>The run has ended.</summary>
    public void Close(StageState state)
    {
        for (; next < pages.Length; next++)
        {
            Take(state, 1);
        }
    }

    private void Take(StageState state, double share)
    {
        var celsius = pages[next].Celsius;
        for (var n = 0; n < nodes.Length; n++)
        {
            var place = stage!.Place(nodes[n]);
            celsius[n] = place < 0 ? float.NaN : (float)state.CelsiusAt(place, share);
        }
    }
}
