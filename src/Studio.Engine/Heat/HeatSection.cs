namespace Studio.Engine.Heat;

/// <summary>
/// The half section of a piece from its middle line to the mould's outer face: through the middle of a face where the mould has sides, radius and height where it is
/// round or a preview. Its nodes stand in rows of <paramref name="Across"/> from the middle outwards, the lowest row first; four neighbours bound a cell.
/// </summary>
/// <param name="Across">Nodes in a row.</param>
/// <param name="Up">Rows.</param>
/// <param name="XMm">Distance from the middle line of each node [mm].</param>
/// <param name="ZMm">Height of each node [mm]; 0 is the mould's inner bottom.</param>
/// <param name="CellLayer">What fills each cell once all is poured, in rows of <paramref name="Across"/> − 1: a layer counted from 0, −1 the mould, −2 air.</param>
public sealed record HeatSection(int Across, int Up, double[] XMm, double[] ZMm, int[] CellLayer);

/// <summary>The section's temperatures at one moment.</summary>
/// <param name="AtHours">[h] on the room's scale.</param>
/// <param name="Celsius">Of each node of the section [°C]; not a number where nothing has been poured yet.</param>
public sealed record HeatPicture(double AtHours, float[] Celsius);
