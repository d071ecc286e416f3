using Studio.Engine;
using Studio.Engine.Layers;

namespace Studio.Pieces;

/// <summary>A design worked out: the engine's result or every field that needs another look, and the findings beside what they concern.</summary>
public sealed record PieceFigures
{
    /// <summary>Null while a field cannot be used or there is no layer yet.</summary>
    public LayersResult? Result { get; init; }

    /// <summary>How the finished piece stands; null while that is not known.</summary>
    public Stability? Standing { get; init; }

    /// <summary>Where the resin between the box for lights and a face is thinnest; null without a box.</summary>
    public ThinnestWall? Thinnest { get; init; }

    /// <summary>The photographs, in the piece's order.</summary>
    public IReadOnlyList<FilmFigures> Sheets { get; init; } = [];

    /// <summary>In our words, with the field's path, such as <c>layers[1].toMm</c>.</summary>
    public IReadOnlyList<InputError> Errors { get; init; } = [];

    /// <summary>Doubts of the trade; their paths begin with the layer, such as <c>layers[1]</c>.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>True when nothing forbids keeping this design.</summary>
    public bool Keepable => Errors.Count == 0 && Findings.All(f => f.Severity != Severity.Stop);

    /// <summary>What is wrong at exactly this field, or null.</summary>
    public string? Wrong(string path) => Errors.FirstOrDefault(e => e.Path == path)?.Message;

    /// <summary>Whether anything at or inside a path needs another look.</summary>
    public bool AnyWrong(string path) => Errors.Any(e => Inside(e.Path, path));

    /// <summary>The findings at or inside a path.</summary>
    public IEnumerable<Finding> At(string path) => Findings.Where(f => Inside(f.Path, path));

    private static bool Inside(string path, string holder) =>
        path.StartsWith(holder, StringComparison.Ordinal) && (path.Length == holder.Length || path[holder.Length] is '.' or '[');
}

/// <summary>The engine's errors in the words of the page: by their codes, for the engine's own sentences name the fields of its contract.</summary>
internal static class FieldWords
{
    /// <summary>An error where the page shows it.</summary>
    public static IEnumerable<InputError> Of(InputError error, Piece piece)
    {
        if (error.Path.StartsWith("resins.", StringComparison.Ordinal))
        {
            return OfResin(error, piece);
        }

        if (error.Path == "resins" || error.Path.StartsWith("mould", StringComparison.Ordinal))
        {
            return error.Path == "resins" ? [] : [new InputError("mould", "This mould's sizes cannot be used: " + error.Message, error.Code)];
        }

        return [error with { Message = Plain(error) }];
    }

    private static IEnumerable<InputError> OfResin(InputError error, Piece piece)
    {
        var id = error.Path.Split('.')[1];
        return piece.Layers.Select((l, i) => (Layer: l, Path: $"layers[{i}].resin")).Where(l => PieceBook.Key(l.Layer.ResinId) == id)
            .Select(l => new InputError(l.Path, $"The data sheet of {l.Layer.Resin?.Name ?? "this resin"} needs another look: {OfSheet(error, l.Layer, piece)}", error.Code));
    }

    private static string OfSheet(InputError error, PieceLayer layer, Piece piece) => error.Code == "batch-used-up"
        ? $"A batch of at most {layer.Resin?.Spec.MaxBatchG:0.#} g is used up by the {piece.WastePerBatchG:0.#} g that stay in each cup. Allow a larger batch, or lower what stays in each cup."
        : error.Message;

    private static string Plain(InputError error) => error.Code switch
    {
        "resin-unknown" => "Choose a resin.",
        "height-choice" => "Say how far this layer goes: up to a height, so thick, or until so much resin is used up.",
        "amount-twice" => $"Give either its mass and density, or {Volume(error.Path)}, not both.",
        "amount-missing" => $"Give either its mass and density, or {Volume(error.Path)}.",
        "mass-missing" => "The mass is missing; it goes with the density.",
        "density-missing" => "The density is missing; it turns the mass into a volume.",
        "former-wall-missing" => "A hollow box needs the thickness of its wall. Give it, or say that the box is solid.",
        _ => error.Message, // speaks of no field by its contract's name
    };

    private static string Volume(string path) => path.Contains(".scatter[", StringComparison.Ordinal) ? "its heaped volume" : "the volume it takes";
}
