using Microsoft.Extensions.Time.Testing;
using Studio.Commissions;
using Studio.Customers;

namespace Studio.Tests.Commissions;

public sealed class EnquiryValidatorTests
{
    private static readonly FakeTimeProvider Clock = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));

    private static EnquiryForm Good => new() { CustomerName = "Odile Marchand", Title = "A disc of buttons" };

    [Fact]
    public void Only_a_name_and_what_is_asked_for_are_needed() => Wrong(Good).ShouldBeEmpty();

    [Fact]
    public void An_empty_form_says_both_things_at_once() => Wrong(new EnquiryForm()).ShouldBe([nameof(EnquiryForm.CustomerName), nameof(EnquiryForm.Title)]);

    public static TheoryData<string, EnquiryForm> Absurd => new()
    {
        { nameof(EnquiryForm.CustomerName), Good with { CustomerName = new string('x', 100_000) } },
        { nameof(EnquiryForm.CustomerName), Good with { CustomerName = " \t " } },
        { nameof(EnquiryForm.Title), Good with { Title = "a\0b" } },
        { nameof(EnquiryForm.Title), Good with { Title = "\u001b[2J" } },
        { nameof(EnquiryForm.Email), Good with { Email = "isla" } },
        { nameof(EnquiryForm.Email), Good with { Email = "isla@@example.org" } },
        { nameof(EnquiryForm.Email), Good with { Email = "isla@example" } },
        { nameof(EnquiryForm.Email), Good with { Email = "is la@example.org" } },
        { nameof(EnquiryForm.Email), Good with { Email = new string('a', 300) + "@example.org" } },
        { nameof(EnquiryForm.Phone), Good with { Phone = "ring the shop" } },
        { nameof(EnquiryForm.Phone), Good with { Phone = "12" } },
        { nameof(EnquiryForm.NeededBy), Good with { NeededBy = new DateOnly(2026, 2, 20) } },
        { nameof(EnquiryForm.NeededBy), Good with { NeededBy = DateOnly.MaxValue } },
        { nameof(EnquiryForm.NeededBy), Good with { NeededBy = DateOnly.MinValue } },
        { nameof(EnquiryForm.Handover), Good with { Handover = "by owl" } },
        { nameof(EnquiryForm.DeliveryAddress), Good with { Handover = "delivery" } },
        { nameof(EnquiryForm.Notes), Good with { Notes = new string('n', 5000) } },
    };

    [Theory]
    [MemberData(nameof(Absurd))]
    public void Absurd_input_is_refused_beside_its_field(string field, EnquiryForm form) => Wrong(form).ShouldBe([field]);

    [Theory]
    [InlineData("+44 1632 960456")]
    [InlineData("(01632) 960-123")]
    [InlineData("06 12.34/56")]
    public void Telephone_numbers_are_taken_as_people_write_them(string phone) => Wrong(Good with { Phone = phone }).ShouldBeEmpty();

    [Fact]
    public void No_sentence_scolds()
    {
        var sentences = Absurd.SelectMany(row => new EnquiryValidator(Clock).Validate(row.Data.Item2).Errors.Select(e => e.ErrorMessage)).ToList();
        sentences.ShouldAllBe(s => s.EndsWith('.') && !s.Contains("invalid", StringComparison.OrdinalIgnoreCase) && !s.Contains("must not be empty", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void A_late_commission_can_still_be_edited() =>
        new CommissionValidator().Validate(new Commission { Title = "Late", NeededBy = new DateOnly(2025, 1, 1) }).IsValid.ShouldBeTrue();

    [Fact]
    public void A_customer_needs_a_name_and_a_reachable_address() =>
        new CustomerValidator().Validate(new Customer { Name = "", Email = "no", Phone = "no", Address = new string('a', 2000) }).Errors.Select(e => e.PropertyName)
            .ShouldBe([nameof(Customer.Name), nameof(Customer.Email), nameof(Customer.Phone), nameof(Customer.Address)]);

    private static IEnumerable<string> Wrong(EnquiryForm form) => new EnquiryValidator(Clock).Validate(form).Errors.Select(e => e.PropertyName).Distinct(StringComparer.Ordinal);
}
