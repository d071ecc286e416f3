using System.Globalization;
using System.Text;
using Bunit;
using FluentValidation;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;
using MudBlazor.Services;
using Studio.Data.Files;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Tests.Shell;

/// <summary>Any page of the studio over a database of its own, with every book there is: found by what it is, as the host finds them.</summary>
public abstract class StudioPages : BunitContext
{
    private readonly string folder = Directory.CreateTempSubdirectory("studio-pages-").FullName;

    protected StudioPages()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        JSInterop.SetupModule("/drawing.js").Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        Services.AddLogging();
        Services.AddSingleton(House.Factory).AddSingleton(House.News).AddSingleton<TimeProvider>(House.Clock).AddSingleton(House.Meshes);
        Services.AddSingleton(new PhotoStore(Path.Combine(folder, "photos"))).AddSingleton(new PaperFolder(Path.Combine(folder, "papers")));
        Services.AddSingleton<IStanding, AlwaysStands>().AddScoped<Who>();
        Services.AddSingleton<IDataProtectionProvider>(new EphemeralDataProtectionProvider());
        Services.AddValidatorsFromAssemblyContaining<Program>(includeInternalTypes: true);
        StudioHost.AddByName(Services);
        this.AddAuthorization().SetAuthorized("Mo").SetRoles(Roles.Owner).SetPolicies("making");
        Begin();
    }

    protected StudioDatabase House { get; } = new();

    /// <summary>Every row of every table as text: the same before and after where nothing was kept.</summary>
    protected async Task<string> KeptAsync()
    {
        await using var db = House.Open();
        await using var link = db.Database.GetDbConnection();
        await link.OpenAsync(Xunit.TestContext.Current.CancellationToken);
        var all = new StringBuilder();
        foreach (var table in db.Model.GetEntityTypes().Select(t => t.GetTableName()!).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
        {
            await using var ask = link.CreateCommand();
            ask.CommandText = $"SELECT * FROM \"{table}\"";
            await using var rows = await ask.ExecuteReaderAsync(Xunit.TestContext.Current.CancellationToken);
            while (await rows.ReadAsync(Xunit.TestContext.Current.CancellationToken))
            {
                all.Append(table).AppendJoin('|', Enumerable.Range(0, rows.FieldCount).Select(i => Convert.ToString(rows.GetValue(i), CultureInfo.InvariantCulture))).Append('\n');
            }
        }

        return all.ToString();
    }

    private void Begin()
    {
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
        Render<MudPopoverProvider>();
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            House.Dispose();
            Directory.Delete(folder, recursive: true);
        }
    }
}
