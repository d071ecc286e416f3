using System.Globalization;
using Studio.Drawing;
using Studio.Engine;
using Studio.Engine.Layers;

namespace Studio.Pieces;

/// <summary>The design as the engine reads it, and what comes of it.</summary>
public sealed partial class PieceBook
{
    /// <summary>A piece's design as the engine wants it. The piece comes with its mould and its layers with their resins.</summary>
    public static LayersInput Design(Piece piece) => new()
    {
        Mould = piece.Mould?.Spec ?? new Engine.Moulds.MouldSpec("", new Dictionary<string, double>(StringComparer.Ordinal)),
        Former = piece.Former,
        Waste = new WasteSpec { Percent = piece.WastePercent, PerBatchG = piece.WastePerBatchG },
        Resins = piece.Layers.Select(l => l.Resin).OfType<Resins.Resin>().DistinctBy(r => r.Id).ToDictionary(r => Key(r.Id), r => r.Spec, StringComparer.Ordinal),
        Layers = [.. piece.Layers.OrderBy(l => l.Order).Select(Layer)],
    };

    /// <summary>Works a design out: grams, levels, findings, and every field that needs another look.</summary>
    /// <param name="piece">With mould, layers and resins.</param>
    /// <param name="keepsakes">What the commission lent, for what may be set in; null leaves those rules out.</param>
    public static PieceFigures Figures(Piece piece, KeepsakeShelf? keepsakes = null)
    {
        var design = Design(piece);
        var outcome = piece.Layers.Count == 0 ? null : LayersCalculation.Run(design);
        var errors = outcome is null ? [] : outcome.Errors.SelectMany(e => FieldWords.Of(e, piece)).DistinctBy(e => e.Path, StringComparer.Ordinal).ToList();
        if (string.IsNullOrWhiteSpace(piece.Name))
        {
            errors.Add(new InputError("name", "Give the piece a name, such as “Heather pyramid”."));
        }

        var result = outcome is { Ok: true } ? outcome.Value : null;
        var mould = result is null ? null : Engine.Moulds.MouldShapes.Make(design.Mould).Value;
        var sheets = FilmRules.Of(piece, result);
        return new PieceFigures
        {
            Result = result,
            Standing = mould is null ? null : Stability.Of(mould, result!),
            Thinnest = mould is null ? null : PieceDoubts.Thinnest(design.Former, mould),
            Sheets = sheets,
            Errors = [.. errors, .. OwnErrors(piece), .. sheets.SelectMany(s => s.Errors)],
            Findings =
            [
                .. result?.Layers.SelectMany(l => l.Warnings) ?? [], .. mould is null ? [] : PieceDoubts.Of(design, result!, mould), .. sheets.SelectMany(s => s.Findings),
                .. keepsakes is null ? [] : PlacedRules.Of(piece, keepsakes),
            ],
        };
    }

    /// <summary>The piece in section.</summary>
    /// <param name="piece">With mould and layers.</param>
    /// <param name="result">Its last usable figures; null draws the empty mould.</param>
    /// <param name="state">How far each layer is.</param>
    /// <param name="asStands">False turns it over.</param>
    /// <param name="sheets">Its photographs where they are worked out already.</param>
    public static SectionView? Section(Piece piece, LayersResult? result, Func<PieceLayer, LayerState> state, bool asStands = true, IReadOnlyList<FilmFigures>? sheets = null)
    {
        var layers = piece.Layers.OrderBy(l => l.Order).ToList();
        var drawn = result?.Layers.Take(layers.Count).Select((r, i) => new SectionLayer(layers[i].Name, r.FromMm, r.ToMm, layers[i].Colour, state(layers[i]), Key: i)
        {
            Scatter = layers[i].Scatter.Count > 0,
            Placed = [.. layers[i].Placed.Select(p => p.Name)],
            Movable = state(layers[i]) is LayerState.Planned,
        });
        return piece.Mould is null ? null : SectionView.For(piece.Mould.Spec, drawn ?? [], piece.Former, asStands, Drawn(sheets ?? FilmRules.Of(piece, result))) is { } view
            ? view with { CentreOfMassMm = result is { FinishedMassG: > 0 } ? result.CentreOfMassMm : null }
            : null;
    }

    /// <summary>Those photographs that stand in the mould, as they are drawn.</summary>
    internal static IReadOnlyList<DrawnFilm> Drawn(IEnumerable<FilmFigures> sheets) =>
        [.. sheets.Where(s => s.Fit is { Stands: true }).Select(s => new DrawnFilm(s.Sheet.Name.Length > 0 ? s.Sheet.Name : "photograph", s.Fit!.InMould))];

    /// <summary>A resin's key in the engine's input.</summary>
    public static string Key(int resinId) => resinId.ToString(CultureInfo.InvariantCulture);

    private static LayerSpec Layer(PieceLayer l) => new()
    {
        Name = l.Name,
        Resin = Key(l.ResinId),
        ToMm = l.ToMm,
        ThicknessMm = l.ThicknessMm,
        ResinMl = l.ResinMl,
        Additions = [.. l.Additions.Select(a => new AdditionSpec { Name = a.Name, PercentOfResin = a.PercentOfResin, DensityGPerMl = a.DensityGPerMl })],
        Scatter = [.. l.Scatter.Select(s => new ScatterSpec { Name = s.Name, MassG = s.MassG, DensityGPerMl = s.DensityGPerMl, BulkMl = s.BulkMl, PackingFraction = s.PackingFraction })],
        Placed = [.. l.Placed.Select(p => new PlacedSpec { Name = p.Name, MassG = p.MassG, DensityGPerMl = p.DensityGPerMl, DisplacedMl = p.DisplacedMl })],
    };

    // what the engine never sees: it counts resin, not lamps and minutes
    private static IEnumerable<InputError> OwnErrors(Piece piece)
    {
        for (var i = 0; i < piece.Fittings.Count; i++)
        {
            if (!(piece.Fittings[i].Count > 0 && piece.Fittings[i].Count <= 10_000))
            {
                yield return new InputError($"fittings[{i}].count", "Say how many: above 0 and at most 10000.");
            }
        }

        for (var i = 0; i < piece.Tasks.Count; i++)
        {
            if (string.IsNullOrWhiteSpace(piece.Tasks[i].Name))
            {
                yield return new InputError($"tasks[{i}].name", "Say what is done by hand, such as “Sand and polish”.");
            }

            if (!(piece.Tasks[i].Minutes >= 0 && piece.Tasks[i].Minutes <= 100_000))
            {
                yield return new InputError($"tasks[{i}].minutes", "Give the minutes: from 0 to 100000.");
            }
        }
    }
}
