using Studio.Commands;
using Studio.SignIn;
using Studio.Tests.SignIn;

namespace Studio.Tests.Commands;

public sealed class OwnerPasswordTests(StudioHosted studio) : IClassFixture<StudioHosted>
{
    [Fact]
    public async Task A_forgotten_password_is_set_at_the_machine_itself()
    {
        (await RunAsync(StudioHosted.OwnerEmail, "lantern moss and rain")).ShouldBe((0, ""));
        using var browser = studio.Browser();
        (await StudioHosted.SignInAsync(browser, StudioHosted.OwnerEmail, "lantern moss and rain")).ShouldBeTrue();
        (await RunAsync(" WREN@studio.example ", StudioHosted.Password)).ShouldBe((0, ""));
    }

    [Fact]
    public async Task One_that_is_tried_first_is_refused_and_the_old_one_stays()
    {
        var (code, wrong) = await RunAsync(StudioHosted.OwnerEmail, "password1234");
        (code, wrong.Contains("tried first", StringComparison.Ordinal)).ShouldBe((1, true));
        using var browser = studio.Browser();
        (await StudioHosted.SignInAsync(browser, StudioHosted.OwnerEmail, StudioHosted.Password)).ShouldBeTrue();
    }

    [Fact]
    public async Task Whoever_is_no_owner_has_an_owner_for_that()
    {
        await studio.AddAsync("Ash", Roles.Maker);
        var asked = false;
        var (code, wrong) = await RunAsync("ash@studio.example", "lantern moss and rain", () => asked = true);
        code.ShouldBe(1);
        wrong.ShouldContain("No owner signs in with ash@studio.example");
        asked.ShouldBeFalse("nobody types a password that goes nowhere");
    }

    [Fact]
    public async Task Where_there_is_no_studio_none_is_made()
    {
        var folder = Path.Combine(Directory.CreateTempSubdirectory("studio-none-").FullName, "data");
        using var wrong = new StringWriter();
        (await OwnerPasswordCommand.RunAsync(folder, StudioHosted.OwnerEmail, () => "lantern moss and rain", TextWriter.Null, wrong)).ShouldBe(1);
        wrong.ToString().ShouldContain("no studio.db");
        Directory.Exists(folder).ShouldBeFalse();
    }

    [Theory]
    [InlineData("owner-password --email wren@studio.example", true)]
    [InlineData("owner-password --data folder --email wren@studio.example", true)]
    [InlineData("owner-password", false)]
    public void The_line_names_whose_it_is(string line, bool good)
    {
        var args = line.Split(' ');
        StudioCommand.Create(args).Parse(args, StudioCommand.Parsing).Errors.Any().ShouldBe(!good);
    }

    private async Task<(int Code, string Wrong)> RunAsync(string email, string password, Action? asked = null)
    {
        using var wrong = new StringWriter();
        var code = await OwnerPasswordCommand.RunAsync(
            studio.DataFolder,
            email,
            () =>
            {
                asked?.Invoke();
                return password;
            },
            TextWriter.Null,
            wrong);
        return (code, wrong.ToString());
    }
}
