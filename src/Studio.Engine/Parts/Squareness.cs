namespace Studio.Engine.Parts;

/// <summary>Whether four sides stand square, by the two diagonals: a carpenter's check.</summary>
public static class Squareness
{
    /// <summary>Both diagonals of a square box [mm]: √(w² + d²).</summary>
    public static double DiagonalMm(double widthMm, double depthMm) => Math.Sqrt((widthMm * widthMm) + (depthMm * depthMm));

    /// <summary>
    /// How far a side of the box leans sideways over the whole depth [mm], from its two diagonals.
    /// In a parallelogram e² − f² = 4·w·d·sin δ, and the far corner stands d·sin δ aside.
    /// </summary>
    /// <param name="widthMm">Outer width [mm].</param>
    /// <param name="oneMm">One diagonal [mm].</param>
    /// <param name="otherMm">The other [mm].</param>
    public static double LeanMm(double widthMm, double oneMm, double otherMm) =>
        Math.Abs((oneMm * oneMm) - (otherMm * otherMm)) / (4 * Require.Positive(widthMm, "mm"));
}
