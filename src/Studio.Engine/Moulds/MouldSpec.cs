namespace Studio.Engine.Moulds;

/// <summary>A mould as the contract names it: a shape key and that shape's dimensions by their contract names.</summary>
/// <param name="Shape">Shape key from <see cref="MouldShapes.All"/>, such as <c>pyramid</c>.</param>
/// <param name="Dimensions">Dimension name with unit, such as <c>baseMm</c>, to its number. Missing ones take the shape's default.</param>
public sealed record MouldSpec(string Shape, IReadOnlyDictionary<string, double> Dimensions);
