using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Studio.Commands;
using Studio.Data;
using Studio.Shell;

namespace Studio.Tests.Commands;

/// <summary><c>studio custody check</c> on the demo and on a database of every released version: what it finds, and with which exit code.</summary>
public sealed class CustodyCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("studio-custody-").FullName;

    public static TheoryData<string> Samples => SampleDatabaseTests.Samples;

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(folder, recursive: true);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public async Task The_records_of_every_version_add_up_once_brought_up_to_date_and_a_planted_fault_is_named(string sample)
    {
        File.Copy(Path.Combine(Sources.Root(), "db", "samples", sample), Path.Combine(folder, "studio.db"));
        await OpenAsync(demo: false);
        var (code, said) = await CheckAsync();
        code.ShouldBe(0, said);
        said.ShouldContain("14 keepsakes: everything adds up.");

        await PlantAsync();
        (code, said) = await CheckAsync();
        code.ShouldBe(2);
        said.ShouldContain("Does not add up: KS-");
        said.ShouldContain("its record says");
    }

    [Fact]
    public async Task The_demo_adds_up()
    {
        await OpenAsync(demo: true);
        var (code, said) = await CheckAsync();
        code.ShouldBe(0, said);
    }

    [Fact]
    public async Task Records_of_an_older_version_are_not_judged_and_a_folder_without_a_studio_is_named()
    {
        (await CheckAsync()).Code.ShouldBe(2);
        File.Copy(Path.Combine(Sources.Root(), "db", "samples", "studio-0.3.0.db"), Path.Combine(folder, "studio.db"));
        var (code, said) = await CheckAsync();
        code.ShouldBe(2);
        said.ShouldContain("older version");
    }

    // one number of one record, past the program
    private async Task PlantAsync()
    {
        await using var db = new SqliteConnection($"Data Source={Path.Combine(folder, "studio.db")}");
        await db.OpenAsync(TestContext.Current.CancellationToken);
        await using var plant = db.CreateCommand();
        plant.CommandText = "UPDATE Keepsake SET HeldCount = HeldCount + 1 WHERE Id = (SELECT MIN(Id) FROM Keepsake)";
        (await plant.ExecuteNonQueryAsync(TestContext.Current.CancellationToken)).ShouldBe(1);
    }

    private async Task<(int Code, string Said)> CheckAsync()
    {
        var said = new StringWriter();
        return (await CustodyCommand.CheckAsync(folder, said, said), said.ToString());
    }

    private async Task OpenAsync(bool demo)
    {
        var builder = WebApplication.CreateBuilder([$"--DataDir={folder}", "--Jobs:Storage=InMemory"]);
        builder.AddStudio();
        await using var app = builder.Build();
        (await DataOpening.OpenAsync(app.Services, app.Configuration)).Ok.ShouldBeTrue();
        if (demo)
        {
            (await app.Services.GetRequiredService<IDemo>().LoadAsync()).Ok.ShouldBeTrue();
        }
    }
}
