using System.Text.Json;
using Microsoft.JSInterop;

namespace Studio.Shell;

/// <summary>Keeps a half-filled form on the device, so that a lost connection or a closed tab loses nothing.</summary>
public static class Drafts
{
    public static ValueTask KeepDraftAsync<T>(this IJSRuntime script, string key, T form) =>
        script.InvokeVoidAsync("studio.keepDraft", key, JsonSerializer.Serialize(form));

    /// <summary>The draft; null when there is none or it is of an older shape.</summary>
    public static async Task<T?> DraftAsync<T>(this IJSRuntime script, string key)
        where T : class
    {
        var json = await script.InvokeAsync<string?>("studio.draft", key);
        try
        {
            return string.IsNullOrEmpty(json) ? null : JsonSerializer.Deserialize<T>(json);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    public static ValueTask DropDraftAsync(this IJSRuntime script, string key) => script.InvokeVoidAsync("studio.dropDraft", key);
}
