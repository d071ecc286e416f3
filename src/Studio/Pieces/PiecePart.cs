using System.Reflection;
using Microsoft.AspNetCore.Components;

namespace Studio.Pieces;

/// <summary>
/// A part of the piece's page that lives in a room of its own: the photograph, the heat, what is cut. The page finds its parts by this
/// base, as addresses and seeds are found, so that a new part edits no list.
/// </summary>
public abstract class PiecePart : ComponentBase
{
    /// <summary>The design under the maker's hands; another one when the page loads it anew.</summary>
    [Parameter, EditorRequired]
    public DesignSession Session { get; set; } = null!;

    /// <summary><c>metric</c> or <c>inch</c>.</summary>
    [Parameter]
    public string Units { get; set; } = "metric";

    /// <summary>Opens the address of a paper once the design is kept.</summary>
    [Parameter]
    public EventCallback<string> OpenPaper { get; set; }

    /// <summary>Every part, in the order of the page.</summary>
    public static IReadOnlyList<Type> All { get; } =
        [.. typeof(PiecePart).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(PiecePart)) && !t.IsAbstract).OrderBy(Place).ThenBy(t => t.Name, StringComparer.Ordinal)];

    private static int Place(Type part) => part.GetCustomAttribute<OnPieceAttribute>()?.Place
        ?? throw new InvalidOperationException($"{part.Name} is a part of the piece's page and does not say its place: put [OnPiece(place)] on it.");
}

/// <summary>Where on the piece's page a part stands.</summary>
/// <param name="place">Counted from the top.</param>
[AttributeUsage(AttributeTargets.Class)]
public sealed class OnPieceAttribute(int place) : Attribute
{
    public int Place { get; } = place;
}
