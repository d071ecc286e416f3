using FluentValidation;
using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <summary>One act on a keepsake as a person fills it in; which fields count depends on the act.</summary>
public sealed class ActForm
{
    private static readonly string[] Placed = [CustodyKind.Moved, CustodyKind.SetIn];

    /// <summary>A key of <see cref="CustodyKind"/>.</summary>
    public string Act { get; set; } = CustodyKind.Moved;

    public string Place { get; set; } = "";

    /// <summary>Why, what was done, or the test's name.</summary>
    public string Words { get; set; } = "";

    /// <summary>Who took it.</summary>
    public string Whom { get; set; } = "";

    /// <summary>Which piece it went into.</summary>
    public int? PieceId { get; set; }

    /// <summary>All that is here; else the amounts count.</summary>
    public bool All { get; set; }

    /// <summary>How many [pieces].</summary>
    public double? Count { get; set; }

    /// <summary>[g].</summary>
    public double? MassG { get; set; }

    /// <summary>A part of one thing, said to be unweighed.</summary>
    public bool Unweighed { get; set; }

    /// <summary>The act with its amounts, for the rules.</summary>
    public CustodyAct Amounts(CustodyState now)
    {
        ArgumentNullException.ThrowIfNull(now);
        var held = now.Balance.Held;
        return All && CustodyKind.Leaves(Act)
            ? new(Act) { Count = held.Count, MassG = MassG ?? held.MassG, Unweighed = held.Count == 0 && held.MassG is null }
            : new(Act) { Count = (int)(Count ?? 0), MassG = MassG, Unweighed = Unweighed };
    }

    /// <summary>The entry that is written down.</summary>
    internal KeepsakeEvent Write(Keepsake keepsake, CustodyAct act, DateTime at, string by) => new()
    {
        KeepsakeId = keepsake.Id,
        At = at,
        By = by,
        Kind = Act,
        Count = CustodyKind.Leaves(Act) || Act == CustodyKind.Divided ? act.Count : null,
        MassG = CustodyKind.Leaves(Act) || Act == CustodyKind.Weighed ? act.MassG : null,
        PieceId = Act is CustodyKind.SetIn or CustodyKind.CopySetIn ? PieceId : null,
        Whom = Act == CustodyKind.Returned ? Whom.Trim() : "",
        Place = Placed.Contains(Act, StringComparer.Ordinal) ? Place.Trim() : "",
        Words = Words.Trim(),
    };
}

/// <summary>All that is missing, at once and beside its field.</summary>
public sealed class ActValidator : AbstractValidator<ActForm>
{
    private const double MostG = 50_000;

    public ActValidator()
    {
        RuleFor(f => f.Place).NotEmpty().When(f => f.Act == CustodyKind.Moved).WithMessage("Say where it lies from now on.");
        RuleFor(f => f.Place).NotEmpty().When(f => f is { Act: CustodyKind.SetIn, All: false }).WithMessage("Say where the rest of it lies.");
        RuleFor(f => f.Place).MaximumLength(120).WithMessage("A place has at most 120 characters; put the rest into the reason.");
        RuleFor(f => f.Words).NotEmpty().When(f => f.Act == CustodyKind.Moved).WithMessage("Say in a few words why it is moved.");
        RuleFor(f => f.Words).NotEmpty().When(f => f.Act is CustodyKind.Prepared or CustodyKind.Copied or CustodyKind.Note or CustodyKind.Divided).WithMessage("Write what was done.");
        RuleFor(f => f.Words).NotEmpty().When(f => f.Act == CustodyKind.Used).WithMessage("Name the test that it was used in.");
        RuleFor(f => f.Words).NotEmpty().When(f => f.Act == CustodyKind.Lost).WithMessage("Say how it was lost, and who was told.");
        RuleFor(f => f.Words).MaximumLength(1000).WithMessage("At most 1000 characters; add a second note for the rest.");
        RuleFor(f => f.MassG).NotNull().When(f => f.Act == CustodyKind.Weighed).WithMessage("Type what the scale shows, such as 12.4 g.");
        RuleFor(f => f.MassG).InclusiveBetween(0.001, MostG).When(f => f.MassG is not null).WithMessage("A keepsake weighs more than nothing and at most 50 kg. Look at the scale again.");
        RuleFor(f => f.Count).Must(c => c is null || (c >= 0 && c <= 9999 && c.Value == Math.Floor(c.Value))).WithMessage("Count whole things, from 0 to 9999.");
        RuleFor(f => f.Count).Must(c => c >= 1).When(f => f.Act == CustodyKind.Divided).WithMessage("Say how many more pieces there are now.");
        RuleFor(f => f.PieceId).NotNull().When(f => f.Act is CustodyKind.SetIn or CustodyKind.CopySetIn).WithMessage("Choose the piece it went into.");
        RuleFor(f => f.Whom).NotEmpty().When(f => f.Act == CustodyKind.Returned).WithMessage("Say who took it.");
        RuleFor(f => f.Whom).MaximumLength(120).WithMessage("At most 120 characters.");
    }
}
