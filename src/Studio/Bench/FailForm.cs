using FluentValidation;
using Studio.Pieces;

namespace Studio.Bench;

/// <summary>A piece that failed, as it is noted.</summary>
public sealed class FailForm
{
    /// <summary>A key of <see cref="Failing"/>.</summary>
    public string Reason { get; set; } = "";

    /// <summary>What was seen.</summary>
    public string Words { get; set; } = "";

    /// <summary>What it cost, in the studio's money; null where nobody knows.</summary>
    public decimal? Cost { get; set; }

    /// <summary>True to draw a new piece from its design, with the keepsakes that are still here.</summary>
    public bool Anew { get; set; } = true;
}

/// <summary>A failure has a reason; one that has no name is described.</summary>
internal sealed class FailValidator : AbstractValidator<FailForm>
{
    public FailValidator()
    {
        RuleFor(f => f.Reason).Must(r => Failing.All.Any(a => a.Key == r)).WithMessage("Choose why it failed.");
        RuleFor(f => f.Words).Must(w => w.Trim().Length >= 3).When(f => f.Reason == Failing.Other).WithMessage("Say in a few words what happened.");
        RuleFor(f => f.Cost).Must(c => c is null or >= 0).WithMessage("What it cost is a sum of money from zero up, or left empty.");
    }
}
