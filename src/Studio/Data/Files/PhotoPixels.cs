using SkiaSharp;

namespace Studio.Data.Files;

/// <summary>What needs the picture itself: its size from the header, whether it decodes to its end, and smaller upright copies.</summary>
internal static class PhotoPixels
{
    private const int JpegQuality = 85;
    private const int KeptQuality = 95;
    private static readonly SKSamplingOptions Smooth = new(SKFilterMode.Linear, SKMipmapMode.Linear);

    /// <summary>Width and height as stored [px], from the header alone.</summary>
    /// <exception cref="PhotoRefusedException">No picture, one that moves, or one too large to open.</exception>
    internal static (int Width, int Height) Measure(string path)
    {
        using var codec = Open(path);
        var (width, height) = (codec.Info.Width, codec.Info.Height);
        RefuseSize(width, height);
        return codec.FrameCount > 1 ? throw new PhotoRefusedException(PhotoStore.Moving) : (width, height);
    }

    /// <summary>Checks a size before anything is opened at it.</summary>
    /// <exception cref="PhotoRefusedException">No pixel at all, or more than we open.</exception>
    internal static void RefuseSize(long width, long height)
    {
        if (width < 1 || height < 1)
        {
            throw new PhotoRefusedException(PhotoStore.Damaged);
        }

        if (width > PhotoStore.MostPixels / height)
        {
            throw new PhotoRefusedException(FormattableString.Invariant(
                $"The picture measures {width} × {height} pixels, more than the {PhotoStore.MostPixels / 1_000_000} million that can be opened here. Save it smaller and choose it again."));
        }
    }

    /// <summary>Decodes the whole picture, for a JPEG no larger than needed, and writes both smaller copies.</summary>
    /// <exception cref="PhotoRefusedException">The picture does not decode to its end.</exception>
    internal static void WriteSmaller(string path, int orientation, string largePath, string smallPath)
    {
        using var decoded = Decode(path, PhotoStore.LargePx);
        using var large = Upright(decoded, orientation, PhotoStore.LargePx);
        Write(large, largePath, JpegQuality);
        using var small = Upright(large, 1, PhotoStore.SmallPx);
        Write(small, smallPath, JpegQuality);
    }

    /// <summary>Writes the whole picture anew, upright and at full size, as JPEG.</summary>
    /// <exception cref="PhotoRefusedException">The picture does not decode to its end.</exception>
    internal static void WriteAsJpeg(string path, int orientation, string jpegPath)
    {
        using var decoded = Decode(path, int.MaxValue);
        using var upright = Upright(decoded, orientation, int.MaxValue);
        Write(upright, jpegPath, KeptQuality);
    }

    private static SKCodec Open(string path) => SKCodec.Create(path) ?? throw new PhotoRefusedException(PhotoStore.Damaged);

    private static SKBitmap Decode(string path, int neededPx)
    {
        using var codec = Open(path);
        return Decode(codec, neededPx);
    }

    /// <summary>The whole picture as stored; for a JPEG no larger than needed.</summary>
    /// <exception cref="PhotoRefusedException">The picture does not decode to its end.</exception>
    internal static SKBitmap Decode(SKCodec codec, int neededPx)
    {
        var longest = Math.Max(codec.Info.Width, codec.Info.Height);
        var size = codec.GetScaledDimensions(Math.Min(1f, neededPx / (float)longest));
        if (Math.Max(size.Width, size.Height) < Math.Min(neededPx, longest))
        {
            size = codec.GetScaledDimensions(Math.Min(1f, 2f * neededPx / longest)); // the codec rounded down: one step up
        }

        var bitmap = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul, SKColorSpace.CreateSrgb()));
        var result = codec.GetPixels(bitmap.Info, bitmap.GetPixels());
        if (result == SKCodecResult.Success)
        {
            return bitmap;
        }

        bitmap.Dispose();
        throw new PhotoRefusedException(result == SKCodecResult.IncompleteInput ? PhotoStore.Truncated : PhotoStore.Damaged);
    }

    private static SKBitmap Upright(SKBitmap raw, int orientation, int mostPx)
    {
        var (w, h) = orientation >= 5 ? (raw.Height, raw.Width) : (raw.Width, raw.Height);
        var scale = Math.Min(1.0, mostPx / (double)Math.Max(w, h));
        var (tw, th) = (Math.Max(1, (int)Math.Round(w * scale)), Math.Max(1, (int)Math.Round(h * scale)));
        var upright = new SKBitmap(new SKImageInfo(tw, th, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb()));
        using var canvas = new SKCanvas(upright);
        using var image = SKImage.FromPixels(raw.PeekPixels());
        canvas.Clear(SKColors.White);
        canvas.Scale(tw / (float)w, th / (float)h);
        canvas.Concat(Turn(orientation, raw.Width, raw.Height));
        canvas.DrawImage(image, 0, 0, Smooth);
        return upright;
    }

    /// <summary>Sets upright what Exif says lies some way 1 to 8; w and h are those of the stored picture.</summary>
    internal static SKMatrix Turn(int orientation, float w, float h) => orientation switch
    {
        2 => new(-1, 0, w, 0, 1, 0, 0, 0, 1),
        3 => new(-1, 0, w, 0, -1, h, 0, 0, 1),
        4 => new(1, 0, 0, 0, -1, h, 0, 0, 1),
        5 => new(0, 1, 0, 1, 0, 0, 0, 0, 1),
        6 => new(0, -1, h, 1, 0, 0, 0, 0, 1),
        7 => new(0, -1, h, -1, 0, w, 0, 0, 1),
        8 => new(0, 1, 0, -1, 0, w, 0, 0, 1),
        _ => SKMatrix.Identity,
    };

    private static void Write(SKBitmap bitmap, string path, int quality)
    {
        using var pixels = bitmap.PeekPixels();
        using var data = pixels.Encode(SKEncodedImageFormat.Jpeg, quality)
            ?? throw new IOException($"The picture for {path} could not be packed.");
        using var file = PhotoFolder.Create(path);
        data.SaveTo(file); // not encoded straight into the file: a full disk must not throw inside native code
        file.Flush(flushToDisk: true);
    }
}
