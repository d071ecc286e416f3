namespace Studio.Engine.Cure;

/// <summary>A milestone as found by one way of reckoning.</summary>
/// <param name="AtHours">When [h]; null with a reason.</param>
/// <param name="Coldest">The sheet's coldest printed row; hours are 0 where no sheet spoke.</param>
/// <param name="Printed">True when the printed hours decide.</param>
/// <param name="Reason">Why there is no time.</param>
internal sealed record Found(double? AtHours, (double C, double Hours) Coldest, bool Printed, string? Reason)
{
    /// <summary>True where the model, not the sheet, decided.</summary>
    internal bool Modelled => By is not DecidedBy.Sheet;

    /// <summary>Which way of reckoning decided.</summary>
    internal DecidedBy By { get; init; }

    /// <summary>What the sheet alone says where the model decided [h]; null where it says nothing.</summary>
    internal double? SheetAtHours { get; private init; }

    /// <summary>True where nothing was asked of this way: the sheet is silent, or there are no kinetics.</summary>
    internal bool Silent { get; private init; }

    internal static Found Not(string reason) => new(null, default, false, reason);

    /// <summary>Nothing is printed; the model may still know.</summary>
    internal static Found NotPrinted(string reason) => Not(reason) with { Silent = true };

    internal static Found? Of(KineticTime? time) => time is null ? null : new(time.AtHours, default, false, time.Reason) { By = DecidedBy.Kinetics };

    /// <summary>For a time before which one must wait: the later of both; a model that never gets there outweighs printed hours.</summary>
    internal Found OrLater(Found? model) =>
        model is null ? this
        : Silent ? model
        : AtHours is null || model.AtHours is null ? this with { AtHours = null, Printed = false, Reason = Reason ?? model.Reason }
        : model.AtHours > AtHours + CureRounding.SlackHours ? this with { AtHours = model.AtHours, Printed = false, By = model.By, SheetAtHours = SheetAtHours ?? (By is DecidedBy.Sheet ? AtHours : null) }
        : this;

    /// <summary>For a time after which it is too late: the earlier of both.</summary>
    internal Found OrEarlier(Found? model) =>
        model is null ? this
        : Silent ? model
        : model.AtHours < AtHours ? this with { AtHours = model.AtHours, Printed = false, By = model.By, SheetAtHours = SheetAtHours ?? (By is DecidedBy.Sheet ? AtHours : null) }
        : this;
}
