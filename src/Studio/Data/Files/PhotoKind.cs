using System.Text;

namespace Studio.Data.Files;

/// <summary>Kinds of picture that are taken in.</summary>
internal enum PhotoKind
{
    Jpeg,
    Png,
    Webp,
}

/// <summary>Tells a file's kind by its first bytes, never by its name.</summary>
internal static class PhotoKinds
{
    internal const int BytesNeeded = 16;

    private const string AsJpeg = "Save or share it as a JPEG and choose it again.";

    /// <summary>Recognises a picture.</summary>
    /// <exception cref="PhotoRefusedException">Nothing that we keep; says what it is and what to do.</exception>
    internal static PhotoKind Of(ReadOnlySpan<byte> start)
    {
        if (start.StartsWith<byte>([0xFF, 0xD8, 0xFF]))
        {
            return PhotoKind.Jpeg;
        }

        if (start.StartsWith<byte>([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A]))
        {
            return PhotoKind.Png;
        }

        return start.StartsWith("RIFF"u8) && At(start, 8, "WEBP"u8) ? PhotoKind.Webp : throw new PhotoRefusedException(WhatItIs(start));
    }

    private static string WhatItIs(ReadOnlySpan<byte> start)
    {
        if (start.IsEmpty)
        {
            return "The file is empty. Choose the photograph again; if it stays empty, take it from where it was first saved.";
        }

        if (At(start, 4, "ftyp"u8))
        {
            return Brand(start) is "heic" or "heix" or "hevc" or "heim" or "heis" or "mif1" or "msf1" or "avif" or "avis"
                ? "This photograph is in a format (HEIC or AVIF) that most browsers cannot show. On the phone, set the camera's format to 'Most compatible' (JPEG), or share the photograph as JPEG, and choose it again."
                : "This is a film, not a photograph. Take a still picture from it and choose that.";
        }

        return start switch
        {
            _ when start.StartsWith("MZ"u8) || start.StartsWith("\x7f"u8) && At(start, 1, "ELF"u8) || start.StartsWith("#!"u8)
                => "This file is a program, whatever its name says, and was not kept. Choose a photograph.",
            _ when start.StartsWith("%PDF"u8) => "This is a PDF, not a photograph. Take a picture of the page, or save the page as a JPEG, and choose that.",
            _ when start.StartsWith("GIF8"u8) => "This is a GIF, which holds too few colours for a keepsake's record. " + AsJpeg,
            _ when start.StartsWith("II*\0"u8) || start.StartsWith("MM\0*"u8) => "This is a TIFF or a camera's raw file. " + AsJpeg,
            _ when start.StartsWith("BM"u8) => "This is a bitmap. " + AsJpeg,
            _ => "This is not a photograph that can be read here. JPEG, PNG and WebP pictures can. " + AsJpeg,
        };
    }

    private static bool At(ReadOnlySpan<byte> start, int offset, ReadOnlySpan<byte> text) =>
        start.Length >= offset + text.Length && start.Slice(offset, text.Length).SequenceEqual(text);

    private static string Brand(ReadOnlySpan<byte> start) => start.Length < 12 ? "" : Encoding.ASCII.GetString(start.Slice(8, 4));
}
