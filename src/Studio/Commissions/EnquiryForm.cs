using FluentValidation;
using Studio.Data;

namespace Studio.Commissions;

/// <summary>An enquiry as it is noted down: a known customer or a new one, and what they ask for.</summary>
public sealed record EnquiryForm
{
    /// <summary>A known customer; null when the name is a new one.</summary>
    public int? CustomerId { get; set; }

    public string CustomerName { get; set; } = "";

    public string Email { get; set; } = "";

    public string Phone { get; set; } = "";

    public string Title { get; set; } = "";

    public string Remembers { get; set; } = "";

    public string Occasion { get; set; } = "";

    public DateOnly? NeededBy { get; set; }

    /// <summary><c>collection</c> or <c>delivery</c>.</summary>
    public string Handover { get; set; } = "collection";

    public string DeliveryAddress { get; set; } = "";

    public string Notes { get; set; } = "";
}

/// <summary>Checks a new enquiry.</summary>
public sealed class EnquiryValidator : AbstractValidator<EnquiryForm>
{
    public EnquiryValidator(TimeProvider clock)
    {
        RuleFor(f => f.CustomerName).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("Who is asking? Type their name, or choose them from the list.").Words(200);
        RuleFor(f => f.Email).Email();
        RuleFor(f => f.Phone).Phone();
        RuleFor(f => f.Title).Must(t => !string.IsNullOrWhiteSpace(t)).WithMessage("What do they ask for? A few words are enough, such as “a pyramid with heather”.").Words(200);
        RuleFor(f => f.Remembers).Words(200);
        RuleFor(f => f.Occasion).Words(200);
        // a day's grace: the studio's today may lie on either side of midnight in Greenwich
        RuleFor(f => f.NeededBy).Must(d => d is null || d >= Today(clock).AddDays(-1)).WithMessage("That day has passed. Choose a day ahead, or leave it empty.")
            .Must(d => d is null || d <= Today(clock).AddYears(CommissionValidator.MostYearsAhead)).WithMessage("That is more than twenty years ahead. Check the year.");
        RuleFor(f => f.Handover).Must(h => h is "collection" or "delivery").WithMessage("Choose how it reaches them: collected or delivered.");
        RuleFor(f => f.DeliveryAddress).Must((f, a) => f.Handover != "delivery" || !string.IsNullOrWhiteSpace(a)).WithMessage("Where is it to be delivered? Type the address, or choose collection for now.").Words(1000);
        RuleFor(f => f.Notes).Words(4000);
    }

    private static DateOnly Today(TimeProvider clock) => DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime);
}

/// <summary>Checks a commission's own fields when they are edited; a day in the past is fine there.</summary>
public sealed class CommissionValidator : AbstractValidator<Commission>
{
    internal const int MostYearsAhead = 20;

    public CommissionValidator()
    {
        RuleFor(c => c.Title).Must(t => !string.IsNullOrWhiteSpace(t)).WithMessage("What do they ask for? A few words are enough, such as “a pyramid with heather”.").Words(200);
        RuleFor(c => c.Remembers).Words(200);
        RuleFor(c => c.Occasion).Words(200);
        RuleFor(c => c.NeededBy).Must(d => d is null || (d.Value.Year >= 2000 && d.Value.Year <= 2100)).WithMessage("Check the year of that day.");
        RuleFor(c => c.Handover).Must(h => h is "collection" or "delivery").WithMessage("Choose how it reaches them: collected or delivered.");
        RuleFor(c => c.DeliveryAddress).Must((c, a) => c.Handover != "delivery" || !string.IsNullOrWhiteSpace(a)).WithMessage("Where is it to be delivered? Type the address, or choose collection for now.").Words(1000);
        RuleFor(c => c.Notes).Words(4000);
    }
}
