using Studio.Data;
using Studio.SignIn;

namespace Studio.Commands;

/// <summary>What the terminal says once the studio is open.</summary>
internal static class Welcome
{
    public static void Print(WebApplication app)
    {
        var url = Open(app.Urls.FirstOrDefault() ?? "");
        var first = app.Services.GetRequiredService<FirstStart>();
        Console.WriteLine();
        Console.WriteLine($"  The studio is open at {url}");
        Console.WriteLine($"  Its data lies in {DataSetup.Folder(app.Configuration)}");
        if (first.EmptyAsync().GetAwaiter().GetResult())
        {
            Console.WriteLine();
            Console.WriteLine("  Nobody has signed in here yet. Open this address to create the owner, or to look around the demo studio:");
            Console.WriteLine($"  {url}/first-start?code={first.Code}");
            Console.WriteLine($"  Under another address of this studio it asks for the code: {first.Code}");
        }

        Console.WriteLine();
    }

    // what listens on every address is opened under this machine's own name
    private static string Open(string url) => url.Replace("://0.0.0.0", "://localhost", StringComparison.Ordinal).Replace("://[::]", "://localhost", StringComparison.Ordinal).TrimEnd('/');
}
