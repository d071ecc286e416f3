using SkiaSharp;
using Studio.Data.Files;

namespace Studio.Tests.Files;

/// <summary>Each step of a recipe on a small picture whose every corner has its own colour.</summary>
public sealed class PreparedPictureTests : PhotoStoreTestBase
{
    private const int Near = 14; // what JPEG may change

    private static SKColor Red => Pictures.Corners[0];

    private static SKColor Lime => Pictures.Corners[1];

    private static SKColor Blue => Pictures.Corners[2];

    private static SKColor Yellow => Pictures.Corners[3];

    [Fact]
    public async Task Nothing_asked_gives_the_picture_as_it_is() => Corners(await Made(new())).ShouldBe([Red, Lime, Blue, Yellow], new Alike());

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public async Task Picture_held_sideways_is_upright_before_anything_else(int orientation)
    {
        using var upright = Pictures.Quarters();
        using var stored = Pictures.StoredFor(orientation, upright);
        using var made = await Made(new(), Pictures.WithExif(Pictures.Jpeg(stored), Pictures.Exif(orientation)));
        (made.Width, made.Height).ShouldBe((480, 320));
        Corners(made).ShouldBe([Red, Lime, Blue, Yellow], new Alike());
    }

    [Fact]
    public async Task Quarter_turn_goes_clockwise()
    {
        using var made = await Made(new() { QuarterTurns = 1 });
        (made.Width, made.Height).ShouldBe((320, 480));
        Corners(made).ShouldBe([Blue, Red, Yellow, Lime], new Alike());
        Corners(await Made(new() { QuarterTurns = 2 })).ShouldBe([Yellow, Blue, Lime, Red], new Alike());
        Corners(await Made(new() { QuarterTurns = -1 })).ShouldBe([Lime, Yellow, Red, Blue], new Alike());
    }

    [Fact]
    public async Task Mirror_changes_left_and_right_of_what_was_turned()
    {
        Corners(await Made(new() { Mirror = true })).ShouldBe([Lime, Red, Yellow, Blue], new Alike());
        Corners(await Made(new() { Mirror = true, QuarterTurns = 1 })).ShouldBe([Red, Blue, Lime, Yellow], new Alike());
    }

    [Fact]
    public async Task Crop_takes_shares_of_what_is_seen()
    {
        using var made = await Made(new() { CropRight = 0.5, CropBottom = 0.25 });
        (made.Width, made.Height).ShouldBe((240, 240));
        Corners(made).ShouldBe([Red, Red, Blue, Blue], new Alike());
        using var turned = await Made(new() { QuarterTurns = 1, CropTop = 0.5 });
        (turned.Width, turned.Height).ShouldBe((320, 240));
        Corners(turned).ShouldBe([Yellow, Lime, Yellow, Lime], new Alike());
    }

    [Fact]
    public async Task Straightened_picture_has_no_empty_corner_and_turns_clockwise()
    {
        var recipe = new PictureRecipe { StraightenDegrees = 10 };
        using var made = await Made(recipe);
        var (width, height) = recipe.Size(480, 320);
        made.Width.ShouldBe((int)Math.Round(width));
        (width / height).ShouldBe(1.5, 1e-9);
        Corners(made).ShouldBe([Red, Lime, Blue, Yellow], new Alike());

        // the line between left and right leans to the right at its top
        made.GetPixel((made.Width / 2) + 10, 4).ShouldBeLike(Red);
        made.GetPixel((made.Width / 2) - 10, made.Height - 5).ShouldBeLike(Yellow);
    }

    [Theory]
    [InlineData(0, 0, 100)]
    [InlineData(20, 0, 151)] // 100 + 0.2 · 255
    [InlineData(-100, 0, 0)]
    [InlineData(100, 0, 255)]
    [InlineData(0, 50, 86)] // 127.5 + 1.5 · (100 − 127.5)
    [InlineData(0, -100, 128)]
    [InlineData(20, -50, 139)]
    public async Task Brightness_lifts_and_contrast_spreads_about_the_middle_grey(double brightness, double contrast, int expected)
    {
        using var made = await Made(new() { BrightnessPercent = brightness, ContrastPercent = contrast }, Plain(new SKColor(100, 100, 100)));
        ((double)made.GetPixel(20, 20).Green).ShouldBe(expected, 3);
    }

    [Fact]
    public async Task One_colour_weighs_red_green_and_blue_as_the_eye_does() // ITU-R BT.601: 0.299 R + 0.587 G + 0.114 B
    {
        using var made = await Made(new() { OneColour = true });
        var corners = Corners(made);
        corners.ShouldAllBe(c => Math.Abs(c.Red - c.Green) < 3 && Math.Abs(c.Green - c.Blue) < 3);
        ((double)corners[0].Red).ShouldBe(76, Near);
        ((double)corners[1].Red).ShouldBe(150, Near);
        ((double)corners[2].Red).ShouldBe(29, Near);
        ((double)corners[3].Red).ShouldBe(226, Near);
    }

    [Fact]
    public async Task Outcome_is_no_larger_than_asked_and_never_blown_up()
    {
        using var bitmap = Pictures.Quarters(2400, 1600);
        var photo = await Keep(Pictures.Jpeg(bitmap));
        using var small = SKBitmap.Decode(await Store.PrepareAsync(photo.Hash, new() { CropLeft = 0.5 }, 600, TestContext.Current.CancellationToken));
        (small.Width, small.Height).ShouldBe((450, 600));
        using var large = SKBitmap.Decode(await Store.PrepareAsync(photo.Hash, new(), 9000, TestContext.Current.CancellationToken));
        (large.Width, large.Height).ShouldBe((2400, 1600));
    }

    [Fact]
    public async Task Original_stays_byte_for_byte_and_a_recipe_undone_is_the_first_picture_again()
    {
        using var bitmap = Pictures.Quarters();
        var photo = await Keep(Pictures.Jpeg(bitmap));
        var (before, files) = (Read(photo, PhotoSize.Original), Files());
        var first = await Store.PrepareAsync(photo.Hash, new(), 4000, TestContext.Current.CancellationToken);
        await Store.PrepareAsync(photo.Hash, new() { QuarterTurns = 1, BrightnessPercent = 40, OneColour = true, CropLeft = 0.3 }, 4000, TestContext.Current.CancellationToken);
        (await Store.PrepareAsync(photo.Hash, new(), 4000, TestContext.Current.CancellationToken)).ShouldBe(first);
        Read(photo, PhotoSize.Original).ShouldBe(before);
        Files().ShouldBe(files);
    }

    [Fact]
    public async Task What_is_not_here_gives_nothing()
    {
        (await Store.PrepareAsync(new string('a', 64), new(), 600, TestContext.Current.CancellationToken)).ShouldBeNull();
        (await Store.PrepareAsync("../../etc", new(), 600, TestContext.Current.CancellationToken)).ShouldBeNull();
    }

    [Fact]
    public void Any_recipe_can_be_carried_out()
    {
        var sound = new PictureRecipe { QuarterTurns = -7, StraightenDegrees = 400, CropLeft = 3, CropRight = 2, CropTop = double.NaN, CropBottom = -1, BrightnessPercent = 1e9, ContrastPercent = double.NaN }.Sound();
        (sound.QuarterTurns, sound.StraightenDegrees, sound.CropTop, sound.CropBottom, sound.BrightnessPercent, sound.ContrastPercent).ShouldBe((1, 20, 0, 0, 100, 0));
        (1 - sound.CropLeft - sound.CropRight).ShouldBe(PictureRecipe.LeastLeft, 1e-12);
    }

    private async Task<SKBitmap> Made(PictureRecipe recipe, byte[]? file = null)
    {
        if (file is null)
        {
            using var bitmap = Pictures.Quarters();
            file = Pictures.Jpeg(bitmap);
        }

        return SKBitmap.Decode(await Store.PrepareAsync((await Keep(file)).Hash, recipe, 4000, TestContext.Current.CancellationToken));
    }

    private static byte[] Plain(SKColor colour)
    {
        using var bitmap = new SKBitmap(64, 48, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb());
        bitmap.Erase(colour);
        return Pictures.Jpeg(bitmap);
    }

    private static SKColor[] Corners(SKBitmap b) => [b.GetPixel(9, 9), b.GetPixel(b.Width - 10, 9), b.GetPixel(9, b.Height - 10), b.GetPixel(b.Width - 10, b.Height - 10)];

    private sealed class Alike : IEqualityComparer<SKColor>
    {
        public bool Equals(SKColor x, SKColor y) => Math.Abs(x.Red - y.Red) < Near && Math.Abs(x.Green - y.Green) < Near && Math.Abs(x.Blue - y.Blue) < Near;

        public int GetHashCode(SKColor obj) => 0;
    }
}

internal static class ColourChecks
{
    internal static void ShouldBeLike(this SKColor actual, SKColor expected) =>
        (Math.Abs(actual.Red - expected.Red) + Math.Abs(actual.Green - expected.Green) + Math.Abs(actual.Blue - expected.Blue)).ShouldBeLessThan(60, $"{actual} is not {expected}");
}
