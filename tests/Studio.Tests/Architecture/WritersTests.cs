using System.Text.RegularExpressions;

namespace Studio.Tests.Architecture;

/// <summary>Who may write without being signed in, and that nothing writes past the one place that asks.</summary>
public sealed partial class WritersTests
{
    // whoever writes without a signed-in person is named here, with the reason
    private static readonly Dictionary<string, string> Own = new(StringComparer.Ordinal)
    {
        ["Clock/ClockBook.cs"] = "the clock comes round by itself",
        ["Climate/IntakeBook.cs"] = "a sensor is known by its token or by the broker",
        ["Commands/OwnerPasswordCommand.cs"] = "whoever may read the data folder may set a forgotten password",
        ["Data/DataOpening.cs"] = "the seeds are planted before anybody can sign in",
        ["Demo/DemoStudio.cs"] = "the demo tells its story into an empty studio",
        ["Keepsakes/CustodyBook.cs"] = "the nightly look at every keepsake, when nobody is signed in",
        ["SignIn/AccessBook.cs"] = "refusals are written down of people who may write nothing",
        ["SignIn/DoorBook.cs"] = "signing in and out, before there is anybody and after",
        ["SignIn/FirstStart.cs"] = "the first person, by the code of the terminal",
        ["SignIn/PeopleBook.cs"] = "goes on as the owner who was asked",
        ["SignIn/SessionBook.cs"] = "goes on as the person who was asked",
        ["SignIn/Sessions.cs"] = "notes that a sign-in is used",
    };

    private static IEnumerable<(string Name, string Text)> Program =>
        Directory.EnumerateFiles(Path.Combine(Sources.Root(), "src", "Studio"), "*", SearchOption.AllDirectories)
            .Where(f => Path.GetExtension(f) is ".cs" or ".razor" && !f.Contains("/obj/", StringComparison.Ordinal) && !f.Contains("/Migrations/", StringComparison.Ordinal))
            .Select(f => (Path.GetRelativePath(Path.Combine(Sources.Root(), "src", "Studio"), f).Replace('\\', '/'), File.ReadAllText(f)));

    [Fact]
    public void Who_writes_under_a_name_of_its_own_is_on_the_list() =>
        Program.Where(p => Speaks().IsMatch(p.Text)).Select(p => p.Name).Order(StringComparer.Ordinal).ShouldBe(Own.Keys.Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("db.WriteAs(\"me\");")]
    [InlineData("who.ActAs(name)")]
    [InlineData("services.GetRequiredService<Who>().GoOnAs(me)")]
    [InlineData("db.Writer = new OwnName(\"me\")")]
    public void A_planted_one_is_seen(string line) => Speaks().IsMatch(line).ShouldBeTrue();

    [Fact]
    public void Contexts_come_from_the_factory_that_knows_who_is_at_work() =>
        Program.Where(p => MadeByHand().IsMatch(p.Text)).Select(p => p.Name).ShouldBe(["Data/DataSetup.cs", "Data/DesignTime.cs"], ignoreOrder: true);

    // the calls, not the places where they are declared
    [GeneratedRegex(@"(?<=[.>)])(WriteAs|ActAs|GoOnAs)\(|new OwnName\((?!name\))|(?<!\{ )\bWriter = ", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Speaks();

    [GeneratedRegex(@"new (Sqlite|Postgres)StudioDb\(|IDbContextFactory<(Sqlite|Postgres)StudioDb>|AddDbContextFactory<|new\(new DbContextOptionsBuilder", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex MadeByHand();
}
