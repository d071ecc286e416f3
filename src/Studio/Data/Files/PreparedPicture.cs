using SkiaSharp;

namespace Studio.Data.Files;

/// <summary>Carries a recipe out on a picture. The picture is only ever read.</summary>
internal static class PreparedPicture
{
    private const int Quality = 93;

    // weights of ITU-R BT.601: how bright red, green and blue seem
    private const float Red = 0.299f;
    private const float Green = 0.587f;
    private const float Blue = 0.114f;

    private static readonly SKSamplingOptions Smooth = new(SKFilterMode.Linear, SKMipmapMode.Linear);

    /// <summary>The outcome as a JPEG, no larger than asked and never larger than the picture has pixels for.</summary>
    /// <param name="open">Opens the picture's file; called twice.</param>
    /// <param name="recipe">What to do with it.</param>
    /// <param name="mostPx">Longer side at most [px].</param>
    /// <exception cref="PhotoRefusedException">The file is no picture, too large, or damaged.</exception>
    internal static byte[] Make(Func<Stream> open, PictureRecipe recipe, int mostPx)
    {
        recipe = recipe.Sound();
        var orientation = Orientation(open);
        using var stream = open();
        using var codec = SKCodec.Create(stream) ?? throw new PhotoRefusedException(PhotoStore.Damaged);
        PhotoPixels.RefuseSize(codec.Info.Width, codec.Info.Height);
        var (fullWidth, fullHeight) = recipe.Size(Side(orientation, codec.Info.Width, codec.Info.Height), Side(orientation, codec.Info.Height, codec.Info.Width));
        var share = Math.Min(1, mostPx / Math.Max(fullWidth, fullHeight));
        using var raw = PhotoPixels.Decode(codec, (int)Math.Ceiling(share * Math.Max(codec.Info.Width, codec.Info.Height)));
        var (width, height) = recipe.Size(Side(orientation, raw.Width, raw.Height), Side(orientation, raw.Height, raw.Width));
        var scale = Math.Min(1, mostPx / Math.Max(width, height));
        using var outcome = new SKBitmap(new SKImageInfo(Px(width * scale), Px(height * scale), SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb()));
        Draw(outcome, raw, orientation, recipe, (width, height));
        using var pixels = outcome.PeekPixels();
        using var data = pixels.Encode(SKEncodedImageFormat.Jpeg, Quality) ?? throw new IOException("The picture could not be packed.");
        return data.ToArray();
    }

    private static void Draw(SKBitmap outcome, SKBitmap raw, int orientation, PictureRecipe recipe, (double Width, double Height) size)
    {
        using var canvas = new SKCanvas(outcome);
        using var image = SKImage.FromPixels(raw.PeekPixels());
        using var tone = SKColorFilter.CreateColorMatrix(Tone(recipe));
        using var paint = new SKPaint { ColorFilter = tone };
        canvas.Clear(SKColors.White);
        canvas.Scale((float)(outcome.Width / size.Width), (float)(outcome.Height / size.Height));
        canvas.Concat(Turn(recipe, orientation, raw.Width, raw.Height));
        canvas.DrawImage(image, 0, 0, Smooth, paint);
    }

    // from the picture as it is stored to the outcome at the same scale; read from the last line up
    private static SKMatrix Turn(PictureRecipe recipe, int orientation, int rawWidth, int rawHeight)
    {
        var upright = PhotoPixels.Turn(orientation, rawWidth, rawHeight);
        float w = Side(orientation, rawWidth, rawHeight), h = Side(orientation, rawHeight, rawWidth);
        var turned = SKMatrix.Identity;
        for (var i = 0; i < recipe.QuarterTurns; i++)
        {
            turned = PhotoPixels.Turn(6, w, h).PreConcat(turned);
            (w, h) = (h, w);
        }

        var mirrored = recipe.Mirror ? PhotoPixels.Turn(2, w, h) : SKMatrix.Identity;
        var kept = (float)recipe.Straightened(w, h);
        return SKMatrix.CreateTranslation((float)(kept * w * (0.5 - recipe.CropLeft)), (float)(kept * h * (0.5 - recipe.CropTop)))
            .PreConcat(SKMatrix.CreateRotationDegrees((float)recipe.StraightenDegrees))
            .PreConcat(SKMatrix.CreateTranslation(-w / 2, -h / 2))
            .PreConcat(mirrored).PreConcat(turned).PreConcat(upright);
    }

    private static float[] Tone(PictureRecipe recipe)
    {
        var contrast = (float)(1 + (recipe.ContrastPercent / 100));
        var lift = (float)((contrast * recipe.BrightnessPercent / 100) + (0.5 * (1 - contrast)));
        var (r, g, b) = (contrast * Red, contrast * Green, contrast * Blue);
        return recipe.OneColour
            ? [r, g, b, 0, lift, r, g, b, 0, lift, r, g, b, 0, lift, 0, 0, 0, 1, 0]
            : [contrast, 0, 0, 0, lift, 0, contrast, 0, 0, lift, 0, 0, contrast, 0, lift, 0, 0, 0, 1, 0];
    }

    private static int Orientation(Func<Stream> open)
    {
        using var stream = open();
        Span<byte> start = stackalloc byte[PhotoKinds.BytesNeeded];
        var kind = PhotoKinds.Of(start[..stream.ReadAtLeast(start, start.Length, throwOnEndOfStream: false)]);
        stream.Position = 0;
        return kind switch
        {
            PhotoKind.Png => PngCleaner.Copy(stream, Stream.Null).Orientation,
            PhotoKind.Jpeg => JpegCleaner.Copy(stream, Stream.Null).Orientation,
            _ => 1,
        };
    }

    private static int Side(int orientation, int along, int across) => orientation >= 5 ? across : along;

    private static int Px(double length) => Math.Max(1, (int)Math.Round(length));
}
