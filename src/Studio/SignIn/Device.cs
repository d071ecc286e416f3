namespace Studio.SignIn;

/// <summary>What a browser says it runs on, in words short enough for a list. A hint for its owner, never a proof.</summary>
public static class Device
{
    // the order matters: later browsers name the earlier ones as well
    private static readonly (string Token, string Words)[] Browsers =
        [("Firefox/", "Firefox"), ("FxiOS/", "Firefox"), ("Edg", "Edge"), ("OPR/", "Opera"), ("CriOS/", "Chrome"), ("Chrome/", "Chrome"), ("Safari/", "Safari")];

    private static readonly (string Token, string Words)[] Systems =
        [("iPhone", "iPhone"), ("iPad", "iPad"), ("Android", "Android"), ("Windows", "Windows"), ("Macintosh", "Mac"), ("CrOS", "ChromeOS"), ("Linux", "Linux")];

    /// <summary>Such as <c>Firefox on Linux</c>; <c>a device that does not say what it is</c> where nothing is known.</summary>
    public static string Words(string? userAgent)
    {
        var (browser, system) = (Named(Browsers, userAgent), Named(Systems, userAgent));
        return (browser, system) switch
        {
            (null, null) => "a device that does not say what it is",
            (null, _) => $"a browser on {system}",
            (_, null) => browser,
            _ => $"{browser} on {system}",
        };
    }

    private static string? Named((string Token, string Words)[] known, string? userAgent) =>
        Array.Find(known, k => (userAgent ?? "").Contains(k.Token, StringComparison.Ordinal)).Words;
}
