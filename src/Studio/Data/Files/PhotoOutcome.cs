namespace Studio.Data.Files;

/// <summary>Which of a photograph's files is wanted.</summary>
public enum PhotoSize
{
    /// <summary>As received, without its metadata.</summary>
    Original,

    /// <summary>Fits into 320 × 320 px; upright; for lists and labels.</summary>
    Small,

    /// <summary>Fits into 1280 × 1280 px; upright; for a page.</summary>
    Large,
}

/// <summary>A photograph that is kept.</summary>
/// <param name="Hash">SHA-256 of the stored original, 64 small hexadecimal digits; its name in the store.</param>
/// <param name="ContentType"><c>image/jpeg</c> or <c>image/png</c>.</param>
/// <param name="Bytes">Length of the stored original [bytes].</param>
/// <param name="WidthPx">Width when upright [px].</param>
/// <param name="HeightPx">Height when upright [px].</param>
/// <param name="TakenAt">When the camera says it was taken, on the camera's own clock; null when it does not say.</param>
/// <param name="FileName">The name it came with, without folders; for people, never for a path.</param>
/// <param name="WasHere">True when the same photograph had been kept before.</param>
public sealed record StoredPhoto(
    string Hash, string ContentType, long Bytes, int WidthPx, int HeightPx, DateTime? TakenAt, string FileName, bool WasHere);

/// <summary>A stored file opened for reading; the caller closes it.</summary>
public sealed record PhotoFile(Stream Content, string ContentType);

/// <summary>Either a kept photograph, or a sentence that says why not and what to do. Then nothing was kept.</summary>
public sealed record PhotoOutcome(StoredPhoto? Photo, string? Refusal)
{
    public bool Ok => Photo is not null;
}

/// <summary>A file that will not be kept; the message is for the person who chose it.</summary>
internal sealed class PhotoRefusedException(string sentence) : Exception(sentence);
