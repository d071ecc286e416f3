using FluentValidation;
using Studio.Data;

namespace Studio.Customers;

/// <summary>Checks a customer's own fields.</summary>
public sealed class CustomerValidator : AbstractValidator<Customer>
{
    public CustomerValidator()
    {
        RuleFor(c => c.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("Who is it? Type the name as they say it.").Words(200);
        RuleFor(c => c.Email).Email();
        RuleFor(c => c.Phone).Phone();
        RuleFor(c => c.Address).Words(1000);
        RuleFor(c => c.Notes).Words(4000);
    }
}
