using Studio.Engine.Moulds;

namespace Studio.Engine.Layers;

/// <summary>How the finished piece stands on a table: on the wider of its two flat ends.</summary>
/// <param name="TurnedOver">True when it stands on what was the open top of the mould.</param>
/// <param name="CentreUpMm">Centre of mass above the table [mm].</param>
/// <param name="ReachMm">From below the centre of mass to the nearest edge it would topple over [mm]; 0 where it has no base.</param>
/// <param name="TiltDegrees">How far it can be tilted before it topples, atan(reach / height of the centre) [°].</param>
public sealed record Stability(bool TurnedOver, double CentreUpMm, double ReachMm, double TiltDegrees)
{
    /// <summary>Below this it is called unsafe [°]; our rule.</summary>
    public const double LeastTiltDegrees = 10;

    /// <summary>How a piece stands; null where it weighs nothing.</summary>
    /// <param name="mould">The mould.</param>
    /// <param name="result">Its layers; the top of the last one is the upper flat end.</param>
    /// <remarks>The mass is taken to lie evenly about the middle of the section at the height of its centre.</remarks>
    public static Stability? Of(MouldBody mould, LayersResult result)
    {
        if (result.FinishedMassG <= 0 || result.Layers.Count == 0)
        {
            return null;
        }

        var top = Math.Min(result.Layers[^1].ToMm, mould.HeightMm);
        var middle = PlanShape.Middle(mould.Outline.PlanAt(Math.Clamp(result.CentreOfMassMm, 0, mould.HeightMm)));
        var (low, high) = (PlanShape.Reach(mould.Outline.PlanAt(0), middle), PlanShape.Reach(mould.Outline.PlanAt(top), middle));
        var turned = high >= low;
        var (reach, up) = turned ? (high, top - result.CentreOfMassMm) : (low, result.CentreOfMassMm);
        return new Stability(turned, up, reach, Math.Atan2(reach, up) * 180 / Math.PI);
    }
}
