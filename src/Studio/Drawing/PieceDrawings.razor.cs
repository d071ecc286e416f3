using Microsoft.AspNetCore.Components;

namespace Studio.Drawing;

/// <summary>The drawings of one piece behind a switch: section, both ways up, plan, and a view that turns.</summary>
public sealed partial class PieceDrawings
{
    private static readonly (Kind Kind, string Words)[] Kinds = [(Kind.Section, "Section"), (Kind.BothWays, "Both ways up"), (Kind.Plan, "Plan"), (Kind.Turning, "Turning")];

    private Kind shown;

    private enum Kind
    {
        Section,
        BothWays,
        Plan,
        Turning,
    }

    [Parameter, EditorRequired]
    public SectionView? View { get; set; }

    /// <summary>Lines of the section can be moved.</summary>
    [Parameter]
    public bool Editable { get; set; }

    /// <summary>The page lists the layers beside the drawing.</summary>
    [Parameter]
    public bool Listed { get; set; }

    [Parameter]
    public double Tallest { get; set; } = 560;

    /// <summary><c>metric</c> or <c>inch</c>.</summary>
    [Parameter]
    public string Units { get; set; } = "metric";

    /// <summary>Holes that the plan shows.</summary>
    [Parameter]
    public IReadOnlyList<PlanHole> Holes { get; set; } = [];

    /// <summary>How the section is worked; below it.</summary>
    [Parameter]
    public string Hint { get; set; } = "";

    /// <summary>What turns the piece over; below the drawings that can be turned.</summary>
    [Parameter]
    public RenderFragment? ChildContent { get; set; }

    /// <summary>A line of the section was moved.</summary>
    [Parameter]
    public EventCallback<LineMove> Moved { get; set; }

    /// <summary>A layer of the section was clicked, by its key.</summary>
    [Parameter]
    public EventCallback<int> Picked { get; set; }
}
