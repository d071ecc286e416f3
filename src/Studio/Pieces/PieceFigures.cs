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

/// <summary>The engine's errors in the words of the page: fields by the names that stand beside them.</summary>
internal static class FieldWords
{
    private static readonly (string Contract, string Words)[] Names =
    [
        ("'massG' with 'densityGPerMl'", "its mass and density"), ("'bulkMl'", "its heaped volume"), ("'displacedMl'", "the volume it takes"), ("'massG'", "the mass"), ("'densityGPerMl'", "the density"),
        ("Give 'wallMm', or set 'solid' to true", "Give it, or say that the box is solid"), ("'waste.perBatchG'", "what stays in each cup"), ("'toMm'", "the height"),
    ];

    /// <summary>An error where the page shows it.</summary>
    public static IEnumerable<InputError> Of(InputError error, Piece piece)
    {
        if (error.Path.StartsWith("resins.", StringComparison.Ordinal))
        {
            return OfResin(error, piece);
        }

        if (error.Path == "resins" || error.Path.StartsWith("mould", StringComparison.Ordinal))
        {
            return error.Path == "resins" ? [] : [new InputError("mould", "This mould's sizes cannot be used: " + error.Message)];
        }

        return [new InputError(error.Path, Plain(error))];
    }

    private static IEnumerable<InputError> OfResin(InputError error, Piece piece)
    {
        var id = error.Path.Split('.')[1];
        return piece.Layers.Select((l, i) => (Layer: l, Path: $"layers[{i}].resin")).Where(l => PieceBook.Key(l.Layer.ResinId) == id)
            .Select(l => new InputError(l.Path, $"The data sheet of {l.Layer.Resin?.Name ?? "this resin"} needs another look: {Plain(error)}"));
    }

    private static string Plain(InputError error)
    {
        if (error.Path.EndsWith(".resin", StringComparison.Ordinal))
        {
            return "Choose a resin.";
        }

        if (error.Message.StartsWith("A layer needs exactly one", StringComparison.Ordinal))
        {
            return "Say how far this layer goes: up to a height, so thick, or until so much resin is used up.";
        }

        return Names.Aggregate(error.Message, (said, name) => said.Replace(name.Contract, name.Words, StringComparison.Ordinal));
    }
}
