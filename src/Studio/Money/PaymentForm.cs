using FluentValidation;

namespace Studio.Money;

/// <summary>Money that came, as it is typed.</summary>
public sealed class PaymentForm
{
    /// <summary>The ways in which money comes; the first is offered.</summary>
    public static IReadOnlyList<string> Ways { get; } = ["by bank transfer", "in cash", "by card", "by cheque"];

    /// <summary>In the commission's currency; above 0.</summary>
    public decimal? Amount { get; set; }

    /// <summary>One of <see cref="Ways"/>.</summary>
    public string How { get; set; } = Ways[0];

    /// <summary>The same for every send of one form, so that a payment is noted once.</summary>
    public string SubmitKey { get; set; } = Guid.NewGuid().ToString("N");
}

/// <summary>What a payment needs before it is looked at against what is owed.</summary>
internal sealed class PaymentValidator : AbstractValidator<PaymentForm>
{
    public PaymentValidator()
    {
        RuleFor(f => f.Amount).Must(a => a > 0).WithMessage("Type the amount that came, above zero.");
        RuleFor(f => f.How).Must(PaymentForm.Ways.Contains).WithMessage("Choose how it came.");
    }
}
