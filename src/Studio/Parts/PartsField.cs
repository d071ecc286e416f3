using Microsoft.AspNetCore.Components;
using Studio.Engine.Parts;
using Studio.Pieces;

namespace Studio.Parts;

/// <summary>What the fields of the parts share: the session they change, and what is wrong with a field.</summary>
public abstract class PartsField : ComponentBase
{
    [Parameter, EditorRequired]
    public DesignSession Session { get; set; } = null!;

    [Parameter, EditorRequired]
    public PartsPlan Plan { get; set; } = null!;

    [Parameter]
    public string Units { get; set; } = "metric";

    protected PieceParts Parts => Session.Piece.Parts ?? new PieceParts();

    /// <summary>Nought is a field left empty.</summary>
    protected static double? Blank(double value) => value == 0 ? null : value;

    protected string? Wrong(string path) => Plan.Errors.FirstOrDefault(e => e.Path == "parts." + path)?.Message;

    protected IEnumerable<Engine.Finding> At(params string[] paths) => Plan.Findings.Where(f => paths.Any(p => f.Path.StartsWith("parts." + p, StringComparison.Ordinal)));

    /// <summary>Changes the parts; changes of one field in a row are undone together.</summary>
    protected void Change(string field, PieceParts now) => Session.Do(field.Length == 0 ? "" : "parts." + field, () => Session.Piece.Parts = now);
}
