using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Bench;

/// <summary>How level the mould has to stand for a layer's line to look straight.</summary>
/// <param name="AcrossMm">The mould's greatest width at the layer's top [mm].</param>
/// <param name="VisibleMm">How far the line may run off [mm].</param>
/// <param name="MostDegrees">The tilt that keeps it there [°].</param>
/// <param name="MostPer100Mm">The same as a rise over 100 mm [mm].</param>
public sealed record BenchTilt(double AcrossMm, double VisibleMm, double MostDegrees, double MostPer100Mm)
{
    internal static BenchTilt? Of(MouldBody? mould, LayerResult? plan)
    {
        if (mould is null || plan is null)
        {
            return null;
        }

        var across = Levelness.AcrossMm(mould, plan.ToMm);
        var most = Levelness.MostTiltDegrees(across);
        return new(across, Levelness.VisibleMm, most, Levelness.MmPer100Mm(most));
    }
}
