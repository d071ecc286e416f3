namespace Studio.Engine.Custody;

/// <summary>What a keepsake of one material needs before resin touches it.</summary>
/// <param name="Key">Stable kebab-case key, stored with the keepsake.</param>
/// <param name="Label">Name in lists.</param>
/// <param name="NeedsBeforeResin">Whole sentences: what to do first, or why it must not go in.</param>
/// <param name="Severity">Note: ordinary preparation. Warn: it goes wrong if skipped. Stop: it must not go into the casting.</param>
/// <param name="Source">Where the rule comes from, or 'common practice, no source'.</param>
public sealed record MaterialRule(string Key, string Label, string NeedsBeforeResin, Severity Severity, string Source)
{
    /// <summary>How long it dries before resin, where it must [days]; the careful end of what the source gives, 0 where drying takes no day.</summary>
    public double DryingDays { get; init; }

    /// <summary>Where <see cref="DryingDays"/> comes from; empty where there are none.</summary>
    public string DryingSource { get; init; } = "";

    /// <summary>True when this must not be embedded at all.</summary>
    public bool NeverEmbed => Severity == Severity.Stop;

    /// <summary>True where the owner may overrule that it is never embedded, with a reason that prints on the receipt: a thing that exists once is the family's own loss to risk.</summary>
    public bool MayBeOverruled { get; init; }

    /// <summary>The rule as a finding at a field's path.</summary>
    public Finding At(string path) => new("material-" + Key, Severity, path, NeedsBeforeResin, Source);
}
