namespace Studio.Engine.Moulds;

/// <summary>What the heat's grid has to know of a shape, beside its areas and outline.</summary>
public sealed record MouldGrid
{
    /// <summary>A round cross-section: the grid is a body of revolution.</summary>
    public static MouldGrid Round { get; } = new();

    /// <summary>Nothing is known of its walls but the area between them: a round body that has it at every height stands for the mould.</summary>
    public static MouldGrid Areas { get; } = new() { AreasOnly = true };

    /// <summary>Number of sides of the cross-section, 3 to 12; 0 for a round one.</summary>
    public Func<MouldSpec, int> Sides { get; init; } = _ => 0;

    /// <summary>Four sides of which two may be longer: a quarter of it is followed, and not one of its alike sectors.</summary>
    public bool Oblong { get; init; }

    /// <summary>As <see cref="Areas"/>; the answer is then that of another body, and its bounds are widened by what that may be wrong by.</summary>
    public bool AreasOnly { get; init; }

    /// <summary>It ends below in a rounded pole, where the grid begins a little higher.</summary>
    public bool PoleBelow { get; init; }

    /// <summary>As below, above.</summary>
    public bool PoleAbove { get; init; }

    /// <summary>Half the width up to which the wall goes at every height, as in a mould that is a block [mm]; null where it follows the cavity.</summary>
    public Func<MouldSpec, double>? BlockHalfMm { get; init; }

    /// <summary>A regular polygon of so many sides.</summary>
    public static MouldGrid Sided(Func<MouldSpec, int> sides) => new() { Sides = sides };
}
