namespace Studio.Engine.Forecast;

/// <summary>What helps one layer, each change tried on the model and none of them against its sheet.</summary>
internal sealed class LayerOffers(AdviceTrial trial, HeatSteps wait, IReadOnlyList<OtherResin> others)
{
    private const double StepMm = 0.5;
    private const double LeastMm = 2;

    // where the sheet prints nothing: the usual coldest workroom
    private const double UsualColdestC = 18;
    private const double UsualWaitHours = 48;
    private const double WorthK = 0.5;

    /// <summary>All kinds, the gentlest on the plan first; asked one by one, so that whoever waits sees them come.</summary>
    public IEnumerable<Func<IEnumerable<AdviceOffer>>> All() => [Thinner, TwoPours, CoolerRoom, LongerWait, SlowerResin];

    private double DepthMm => trial.Layer.ToMm - trial.Layer.FromMm;

    private IEnumerable<AdviceOffer> Thinner()
    {
        var allowed = Math.Min(DepthMm - 1e-6, trial.Resin.MaxPourMm ?? double.PositiveInfinity);
        var most = Math.Floor(allowed / StepMm) * StepMm;
        var last = (int)Math.Floor((most - LeastMm) / StepMm);
        if (last < 0)
        {
            yield break;
        }

        var (step, piece, bound) = trial.Mildest(last, s => PieceChange.Deep(trial.Piece, most - (StepMm * s)));
        var mm = most - (StepMm * step);
        if (trial.Keeps(bound))
        {
            yield return Offer(AdviceOffer.Thinner, mm, "mm", piece, bound, $"Pour it at most {mm:0.#} mm deep");
        }
    }

    private IEnumerable<AdviceOffer> TwoPours()
    {
        if (DepthMm < 2 * LeastMm || DepthMm / 2 > (trial.Resin.MaxPourMm ?? double.PositiveInfinity) + 1e-9 || wait.For(trial, PieceChange.Deep(trial.Piece, DepthMm / 2)) is not { } hours)
        {
            yield break;
        }

        var piece = PieceChange.Split(trial.Piece, hours);
        ForecastResin[] resins = [.. trial.Resins, trial.Resin];
        var bound = trial.Sure(piece, resins, top: 2);
        yield return Offer(AdviceOffer.TwoPours, hours, "h", piece, bound, $"Pour it in two, each {DepthMm / 2:0.##} mm deep, {hours:0.#} h apart", resins);
    }

    private IEnumerable<AdviceOffer> CoolerRoom()
    {
        var coldest = PieceChange.ColdestC(trial.Piece);
        var most = (int)Math.Floor(coldest - (trial.Resin.MinRoomC ?? UsualColdestC) + 1e-9);
        if (most < 1)
        {
            yield break;
        }

        var (step, piece, bound) = trial.Mildest(most - 1, s => PieceChange.Cooler(trial.Piece, s + 1));
        var why = trial.Resin.MinRoomC is null ? "" : $" (its sheet allows {trial.Resin.MinRoomC:0.#} °C)";
        yield return Offer(AdviceOffer.CoolerRoom, step + 1, "K", piece, bound, $"Cool the room by {step + 1} K before this pour, to {coldest - step - 1:0.#} °C{why}");
    }

    private IEnumerable<AdviceOffer> LongerWait()
    {
        if (trial.Piece.Layers.Count < 2)
        {
            yield break;
        }

        var since = trial.Layer.PouredAtHours - trial.Piece.Layers[^2].PouredAtHours;
        var last = (int)Math.Floor(trial.Resins[^2].NextPourUntilHours - since ?? UsualWaitHours);
        if (last < 1)
        {
            yield break;
        }

        var (step, piece, bound) = trial.Mildest(last - 1, s => PieceChange.Later(trial.Piece, s + 1));
        if (trial.Before.PeakC - bound.PeakC >= WorthK)
        {
            var window = trial.Resins[^2].NextPourUntilHours is null ? "; if the next-pour window of that layer is over by then, abrade and clean it" : "";
            yield return Offer(AdviceOffer.LongerWait, step + 1, "h", piece, bound, $"Wait {step + 1} h longer before this pour, {since + step + 1:0.#} h after the one under it{window}");
        }
    }

    private IEnumerable<AdviceOffer> SlowerResin()
    {
        foreach (var other in others.Where(o => o.Resin.State is not null && !(DepthMm > o.Resin.MaxPourMm + 1e-9)))
        {
            ForecastResin[] resins = [.. trial.Resins.SkipLast(1), other.Resin];
            var bound = trial.Sure(trial.Piece, resins);
            if (trial.Before.PeakC - bound.PeakC >= WorthK)
            {
                yield return Offer(AdviceOffer.SlowerResin, Math.Round(trial.Before.PeakC - bound.PeakC), "K", trial.Piece, bound, $"Pour {other.Name} in its place", resins);
            }
        }
    }

    private AdviceOffer Offer(string kind, double value, string unit, Heat.HeatInput piece, HighBound bound, FormattableString change, IReadOnlyList<ForecastResin>? resins = null)
    {
        var (gain, keeps) = (trial.Before.PeakC - bound.PeakC, trial.Keeps(bound));
        var (was, still) = (trial.Before.PeakC > HeatLimit.RunAwayC, bound.PeakC > HeatLimit.RunAwayC);
        var told = still ? (FormattableString)$". That does not suffice: it would still run away."
            : keeps ? was ? $": then {bound.PeakC:0} °C at most." : (FormattableString)$": then {bound.PeakC:0} °C at most, {gain:0} K less."
            : was ? $": it would no longer run away, but {bound.PeakC:0} °C does not suffice." : (FormattableString)$". That gains {gain:0} K and does not suffice: {bound.PeakC:0} °C may still be reached.";
        return new()
        {
            Kind = kind,
            Value = value,
            Unit = unit,
            PeakHighC = bound.PeakC,
            GainK = gain,
            Suffices = keeps,
            Taken = piece,
            TakenResins = resins ?? trial.Resins,
            Words = FormattableString.Invariant(change) + FormattableString.Invariant(told),
        };
    }
}

/// <summary>How long a first pour must wait for a second one.</summary>
internal sealed class HeatSteps
{
    private const double WatchedHours = 240;

    /// <summary>
    /// Hours from a layer's pour to the next of the same resin, up to the half hour: what the sheet prints, gelled everywhere and past the peak, each by its later bound.
    /// Null where it does not gel in ten days, or where the sheet's window closes before.
    /// </summary>
    public double? For(AdviceTrial trial, Heat.HeatInput piece)
    {
        var told = trial.Tell(piece with { UntilHours = piece.Layers[^1].PouredAtHours + WatchedHours });
        if (told.LastGelAfterHours is null || (told.Intervals is { } i && i.LastGelAfterHours is null))
        {
            return null;
        }

        var gelled = told.Intervals?.LastGelAfterHours?.To ?? told.LastGelAfterHours.Value;
        var peak = told.Intervals?.PeakAfterHours.To ?? told.PeakAfterHours;
        var hours = Math.Ceiling(Math.Max(trial.Resin.NextPourFromHours ?? 0, Math.Max(gelled, peak)) * 2) / 2;
        return hours > trial.Resin.NextPourUntilHours ? null : hours;
    }
}
