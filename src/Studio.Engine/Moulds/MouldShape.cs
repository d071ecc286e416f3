namespace Studio.Engine.Moulds;

/// <summary>One kind of mould: its contract key, what a person calls it, and the dimensions that fix it.</summary>
/// <param name="Key">Contract key, such as <c>pyramid</c>.</param>
/// <param name="DisplayName">In plain words, such as 'Pyramid'.</param>
/// <param name="Dimensions">Every dimension, in the order a form asks for them.</param>
/// <param name="Make">Makes the mould from checked numbers, one for each dimension.</param>
public sealed record MouldShape(
    string Key, string DisplayName, IReadOnlyList<Dimension> Dimensions, Func<IReadOnlyDictionary<string, double>, MouldBody> Make)
{
    /// <summary>How one of certain measures is called, such as 'Square pyramid'; the display name where the measures do not change it.</summary>
    public Func<MouldSpec, string> Called { get; init; } = _ => DisplayName;

    /// <summary>What a form says beside its measures, a whole sentence; empty for nothing.</summary>
    public string Note { get; init; } = "";

    /// <summary>How a grid for its heat is laid; null where nobody can, and then <see cref="NoGrid"/> says why.</summary>
    public MouldGrid? Grid { get; init; }

    /// <summary>Why its heat cannot be worked out, a whole sentence; only where there is no <see cref="Grid"/>.</summary>
    public string NoGrid { get; init; } = "The heat of this shape is not worked out yet: nobody has laid a grid into it.";

    /// <summary>What it needs beside its dimensions.</summary>
    public MouldNeeds Needs { get; init; }

    /// <summary>Makes it from more than its dimensions, or adds what is wrong; null where the dimensions are enough.</summary>
    public Func<MouldSpec, string, InputErrors, MouldBody?>? FromSpec { get; init; }

    /// <summary>What is wrong with dimensions that are right each for itself: the dimension and a sentence.</summary>
    public Func<IReadOnlyDictionary<string, double>, IReadOnlyList<(string Name, string Message)>> Complaints { get; init; } = _ => [];
}

/// <summary>What a shape needs beside dimensions.</summary>
public enum MouldNeeds
{
    /// <summary>Nothing.</summary>
    Nothing,

    /// <summary>The readings of a water fill.</summary>
    Readings,

    /// <summary>A mesh of its cavity.</summary>
    Mesh,
}

/// <summary>A number that a shape needs.</summary>
/// <param name="Name">Contract name with its unit, such as <c>baseMm</c>.</param>
/// <param name="Label">For a form, in plain words and without the unit.</param>
/// <param name="Unit"><c>mm</c>, <c>°</c> or empty for a count.</param>
/// <param name="Min">Smallest number allowed, itself included unless <paramref name="AboveMin"/>.</param>
/// <param name="Max">Largest number allowed, itself included.</param>
/// <param name="Default">Taken when left out; null when it must be given.</param>
/// <param name="AboveMin">True when <paramref name="Min"/> itself is too small.</param>
/// <param name="Whole">True for a count.</param>
public sealed record Dimension(
    string Name, string Label, string Unit, double Min, double Max, double? Default = null, bool AboveMin = false, bool Whole = false)
{
    /// <summary>Longest edge a mould may have [mm]; anything beyond is a slip of the unit or the finger.</summary>
    public const double LongestMm = 10_000;

    /// <summary>A sound measure, from which the form draws its example.</summary>
    public double Example { get; init; } = Default ?? Math.Clamp(ExampleMm, Min, Max);

    private const double ExampleMm = 100;

    /// <summary>A length above zero that must be given.</summary>
    public static Dimension Length(string name, string label) => new(name, label, "mm", 0, LongestMm, AboveMin: true);

    /// <summary>The inner height [mm].</summary>
    public static Dimension Height { get; } = Length("heightMm", "Height") with { Example = 90 };

    /// <summary>Number of sides of a regular polygon, 3 to 12.</summary>
    public static Dimension Sides(double? otherwise) => new("sides", "Number of sides", "", 3, 12, otherwise, Whole: true) { Example = otherwise ?? 6 };

    /// <summary>What is wrong with a number, or null when it can be used.</summary>
    public string? Complaint(double value)
    {
        var inRange = (AboveMin ? value > Min : value >= Min) && value <= Max;
        if (inRange && (!Whole || Math.Floor(value) == value))
        {
            return null;
        }

        var range = FormattableString.Invariant($"{(AboveMin ? "above" : "at least")} {Min} and at most {Max}{(Unit.Length > 0 ? " " + Unit : "")}");
        var given = double.IsNaN(value) ? "there is no number" : FormattableString.Invariant($"{value} was given");
        return $"{Label} must be {(Whole ? "a whole number " : "")}{range}; {given}.";
    }
}
