namespace Studio.Engine.Cure;

/// <summary>Result of <c>calc cure</c>.</summary>
/// <param name="Layers">As given.</param>
/// <param name="Demould">Of the whole piece: its slowest layer.</param>
/// <param name="Findings">On the readings and the data sheets; each layer has its own besides.</param>
public sealed record CureResult(IReadOnlyList<CureLayerResult> Layers, Milestone Demould, IReadOnlyList<Finding> Findings);

/// <summary>One layer.</summary>
/// <param name="PouredAtHours">When it was poured [h]; null when the layer it waits for does not gel.</param>
/// <param name="Cure">Its milestones.</param>
/// <param name="AtEnd">State at the time asked for; null before the pour, and without kinetics.</param>
/// <param name="NoConversion">Why there is no state; null when there is one.</param>
/// <param name="Curve">From the pour to the time asked for.</param>
public sealed record CureLayerResult(double? PouredAtHours, LayerCure Cure, CurePoint? AtEnd, string? NoConversion, IReadOnlyList<CurePoint> Curve);
