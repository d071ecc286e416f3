using Studio.Commands;

namespace Studio.Tests.Commands;

public sealed class StudioCommandTests
{
    [Theory]
    [InlineData("check")]
    [InlineData("serv")]
    [InlineData("--data folder check")]
    [InlineData("demo twice")]
    public void A_word_that_is_no_command_is_refused_with_those_that_are(string line)
    {
        var args = line.Split(' ');
        var parsed = StudioCommand.Create(args).Parse(args, StudioCommand.Parsing);
        var said = parsed.Errors.ShouldHaveSingleItem().Message;
        said.ShouldContain($"'{args[^1]}'");
        said.ShouldContain("calc, ");
        said.ShouldContain("demo");
    }

    [Theory]
    [InlineData("")]
    [InlineData("--urls http://127.0.0.1:5191")]
    [InlineData("--data folder --urls=http://127.0.0.1:5191")]
    [InlineData("--environment=Development --contentRoot=/somewhere")]
    [InlineData("demo --data folder")]
    [InlineData("Database:Postgres=Host=db")]
    [InlineData("calc price costs.json")]
    public void Settings_and_commands_are_taken(string line)
    {
        var args = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        StudioCommand.Create(args).Parse(args, StudioCommand.Parsing).Errors.ShouldBeEmpty();
    }
}
