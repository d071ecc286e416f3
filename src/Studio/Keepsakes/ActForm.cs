using FluentValidation;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>One act on a keepsake as a person fills it in; which fields count depends on the act.</summary>
public sealed class ActForm
{
    /// <summary>A constant of <see cref="CustodyLink"/>.</summary>
    public string Act { get; set; } = CustodyLink.Moved;

    public string Place { get; set; } = "";

    /// <summary>Why it is moved, or what was done.</summary>
    public string Words { get; set; } = "";

    /// <summary>Which piece it was cast into, or who took it.</summary>
    public string Whither { get; set; } = "";

    public double? MassG { get; set; }

    /// <summary>True when only a part is cast and the rest stays here.</summary>
    public bool LeftOver { get; set; }
}

/// <summary>All that is missing, at once and beside its field.</summary>
public sealed class ActValidator : AbstractValidator<ActForm>
{
    private const double MostG = 50_000;

    public ActValidator()
    {
        RuleFor(f => f.Place).NotEmpty().When(f => f.Act == CustodyLink.Moved).WithMessage("Say where it lies from now on.");
        RuleFor(f => f.Place).MaximumLength(120).WithMessage("A place has at most 120 characters; put the rest into the reason.");
        RuleFor(f => f.Words).NotEmpty().When(f => f.Act == CustodyLink.Moved).WithMessage("Say in a few words why it is moved.");
        RuleFor(f => f.Words).NotEmpty().When(f => f.Act is CustodyLink.Prepared or CustodyLink.Copied or CustodyLink.Note).WithMessage("Write what was done.");
        RuleFor(f => f.Words).MaximumLength(1000).WithMessage("At most 1000 characters; add a second note for the rest.");
        RuleFor(f => f.MassG).NotNull().When(f => f.Act == CustodyLink.Weighed).WithMessage("Type what the scale shows, such as 12.4 g.");
        RuleFor(f => f.MassG).InclusiveBetween(0.001, MostG).When(f => f.MassG is not null).WithMessage("A keepsake weighs more than nothing and at most 50 kg. Look at the scale again.");
        RuleFor(f => f.Whither).NotEmpty().When(f => f.Act is CustodyLink.Embedded or CustodyLink.CopyCast).WithMessage("Say which piece it went into.");
        RuleFor(f => f.Whither).NotEmpty().When(f => f.Act == CustodyLink.Returned).WithMessage("Say who took it.");
        RuleFor(f => f.Whither).MaximumLength(120).WithMessage("At most 120 characters.");
    }
}

/// <summary>Turns an act into the link that is written down: a whole sentence that stays true whatever is renamed later.</summary>
internal static class ActWriting
{
    public static KeepsakeEvent Write(ActForm form, Keepsake keepsake, ChainNow now, DateTime at, string by)
    {
        var whole = form.Act == CustodyLink.Embedded && !form.LeftOver;
        return new KeepsakeEvent
        {
            KeepsakeId = keepsake.Id,
            At = at,
            By = by,
            Kind = form.Act,
            MassG = form.Act is CustodyLink.Weighed or CustodyLink.Embedded or CustodyLink.Returned ? form.MassG : null,
            Place = form.Act switch
            {
                CustodyLink.Moved => form.Place.Trim(),
                CustodyLink.Embedded when whole => "In " + form.Whither.Trim(),
                CustodyLink.Returned => "With " + form.Whither.Trim(),
                _ => "",
            },
            Words = Sentence(form, now, whole),
        };
    }

    private static string Sentence(ActForm form, ChainNow now, bool whole)
    {
        var (words, whither, mass) = (End(form.Words), form.Whither.Trim(), form.MassG is { } g ? Say.Grams(g) : "");
        return form.Act switch
        {
            CustodyLink.Moved => $"Moved from {now.Place} to {form.Place.Trim()}: {words}",
            CustodyLink.Weighed => $"Weighed: {mass}.{Before(words)}",
            CustodyLink.Prepared => $"Prepared: {words}",
            CustodyLink.Copied => $"Copied: {words}",
            CustodyLink.CopyCast => $"A copy was cast into {whither}; the original stayed here.{Before(words)}",
            CustodyLink.Embedded => (whole, mass.Length) switch
            {
                (true, 0) => $"Cast into {whither}.{Before(words)}",
                (true, _) => $"Cast into {whither}: {mass}.{Before(words)}",
                (false, 0) => $"A part was cast into {whither}; the rest stayed here.{Before(words)}",
                _ => $"{mass} were cast into {whither}; the rest stayed here.{Before(words)}",
            },
            CustodyLink.Returned => (now.Custody, now.LeftOver, mass.Length) switch
            {
                (CustodyChain.InPiece, false, _) => $"Went home in its piece with {whither}.{Before(words)}",
                (_, true, 0) => $"The rest went back with {whither}.{Before(words)}",
                (_, true, _) => $"The rest, {mass}, went back with {whither}.{Before(words)}",
                (_, _, 0) => $"Went back with {whither}.{Before(words)}",
                _ => $"Went back with {whither}, weighing {mass}.{Before(words)}",
            },
            _ => words,
        };
    }

    private static string Before(string words) => words.Length == 0 ? "" : " " + words;

    /// <summary>Ends what was typed with a full stop, so that the chain reads as sentences.</summary>
    internal static string End(string words)
    {
        var trimmed = words.Trim();
        return trimmed.Length == 0 || trimmed[^1] is '.' or '?' or '!' ? trimmed : trimmed + ".";
    }
}
