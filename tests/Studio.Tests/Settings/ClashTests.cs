using Studio.Customers;
using Studio.Shell;

namespace Studio.Tests.Settings;

public sealed class ClashTests
{
    private readonly Clash<Customer> clash = new(CustomerBook.Labels);

    [Fact]
    public void What_only_they_changed_comes_into_the_form_and_what_only_I_changed_stays()
    {
        clash.Begin(new Customer { Name = "Isla", Phone = "1" });
        var form = new Customer { Name = "Isla", Phone = "1", Email = "mine@example.org" };

        clash.Meet(form, new Customer { Name = "Isla Harrow", Phone = "1", Version = 3 });

        (form.Name, form.Email, form.Version).ShouldBe(("Isla Harrow", "mine@example.org", 3));
        clash.Both.ShouldBeEmpty();
    }

    [Fact]
    public void What_both_changed_is_asked_about_and_is_not_saved_before_the_answer()
    {
        clash.Begin(new Customer { Name = "Isla" });
        var form = new Customer { Name = "Isla mine" };
        var theirs = new Customer { Name = "Isla theirs", Version = 3 };

        clash.Meet(form, theirs);
        clash.Meet(form, theirs); // pressing save again answers nothing
        (clash.Met, form.Version).ShouldBe((true, 0));
        clash.Both.ShouldBe([new Difference("Name", "Isla mine", "Isla theirs")]);

        clash.KeepMine(form);
        (clash.Met, form.Name, form.Version).ShouldBe((false, "Isla mine", 3));
    }
}
