using Studio.Engine;

namespace Studio.Clock;

/// <summary>What a piece's clock says at one moment.</summary>
/// <param name="Layers">Poured layers from the lowest up.</param>
/// <param name="Next">What comes next for hands.</param>
/// <param name="Demould">When the slowest layer lets the piece out of its mould; no time while a layer of the design is not poured.</param>
/// <param name="FullCure">When the slowest layer is fully cured; no time while a layer of the design is not poured.</param>
/// <param name="Findings">Doubts about the readings and the layers, each to be shown beside the clock.</param>
public sealed record PieceTimes(IReadOnlyList<LayerTimes> Layers, NextAct Next, ClockTime Demould, ClockTime FullCure, IReadOnlyList<Finding> Findings);

/// <summary>A moment that the clock computed, or the sentence that says why it cannot.</summary>
/// <param name="At">UTC; a ready time rounded up to the minute, a closing time down.</param>
/// <param name="RestsOn">A whole sentence: the reading behind it, or the reason there is no time.</param>
/// <param name="Celsius">The reading behind it [°C].</param>
public sealed record ClockTime(DateTime? At, string RestsOn, double? Celsius = null)
{
    /// <summary>True from that minute on; never when the time is unknown.</summary>
    public bool Reached(DateTime now) => now >= At;
}

/// <summary>One poured layer's times.</summary>
public sealed record LayerTimes
{
    public required int PourId { get; init; }

    public required int Order { get; init; }

    public required string Name { get; init; }

    public required DateTime StartedAt { get; init; }

    public required ClockTime Gel { get; init; }

    public required ClockTime From { get; init; }

    public required ClockTime Until { get; init; }

    public required ClockTime Demould { get; init; }

    public required ClockTime FullCure { get; init; }

    /// <summary>True until the layer may be demoulded: it is drawn with a pattern.</summary>
    public required bool Curing { get; init; }

    /// <summary>How far it is, in words: "still liquid until 12:30".</summary>
    public required string Words { get; init; }
}

/// <summary>What hands do next.</summary>
public enum ActKind
{
    /// <summary>Nothing is poured yet.</summary>
    PourFirst,

    /// <summary>The top layer does not take the next pour yet.</summary>
    WaitForWindow,

    /// <summary>The window for the next pour is open.</summary>
    PourNext,

    /// <summary>The window has closed with layers still to pour.</summary>
    WindowClosed,

    /// <summary>Every layer is poured; the slowest still needs time.</summary>
    WaitDemould,

    /// <summary>Every layer may come out of the mould.</summary>
    Demould,

    /// <summary>Out of the mould, still curing.</summary>
    WaitFullCure,

    /// <summary>Fully cured: hand work.</summary>
    Finish,

    /// <summary>No room temperature is known, so no time can be said.</summary>
    WaitReading,

    /// <summary>The data sheet prints no such time.</summary>
    AskSheet,

    /// <summary>Something outside the mould is missing: a keepsake, the deposit, a yes.</summary>
    WaitOthers,

    /// <summary>Nothing is left to do at the bench.</summary>
    Done,
}

/// <summary>How soon hands are needed; the order of the shelf.</summary>
public enum Urgency
{
    Overdue,
    Closing,
    Now,
    Today,

    /// <summary>Can be done at any time; no clock runs.</summary>
    Whenever,
    Later,
    Waiting,
}

/// <summary>The next thing to do, when, why, and how pressing it is.</summary>
public sealed record NextAct
{
    public required ActKind Kind { get; init; }

    /// <summary>Whole sentences for the tag.</summary>
    public required string Words { get; init; }

    /// <summary>From when it can be done [UTC].</summary>
    public DateTime? From { get; init; }

    /// <summary>Until when [UTC].</summary>
    public DateTime? Until { get; init; }

    /// <summary>When this became what is next [UTC].</summary>
    public DateTime? Since { get; init; }

    /// <summary>A whole sentence: what the times rest on.</summary>
    public string RestsOn { get; init; } = "";

    public required Urgency Urgency { get; init; }

    /// <summary>Hands needed [min], expected.</summary>
    public double Minutes { get; init; }

    /// <summary>The layer it is about: the one to pour, else the top one poured; from 0.</summary>
    public int? LayerOrder { get; init; }

    public string LayerName { get; init; } = "";

    /// <summary>What has to be seen to before it is done, in whole sentences; empty where nothing.</summary>
    public string Wants { get; init; } = "";

    /// <summary>Changes exactly when there is something new to say.</summary>
    public string Key => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Kind}:{LayerOrder}");
}
