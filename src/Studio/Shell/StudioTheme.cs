using MudBlazor;

namespace Studio.Shell;

/// <summary>Warm paper, dark ink, one accent; every pair at 4.5:1 or better on its ground.</summary>
public static class StudioTheme
{
    private static readonly string[] Sans = ["Source Sans 3", "system-ui", "sans-serif"];
    private static readonly string[] Serif = ["Source Serif 4", "Georgia", "serif"];

    public static MudTheme Theme { get; } = new()
    {
        PaletteLight = new PaletteLight
        {
            Primary = "#9A5B13",
            PrimaryContrastText = "#FFFFFF",
            Secondary = "#4A6272",
            Tertiary = "#3F6B45",
            Info = "#4A6272",
            Success = "#3F6B45",
            Warning = "#9A5B13",
            Error = "#A23B2A",
            Dark = "#1F2B33",
            Background = "#FBF8F3",
            BackgroundGray = "#F3EDE2",
            Surface = "#FFFDF9",
            AppbarBackground = "#FBF8F3",
            AppbarText = "#1F2B33",
            DrawerBackground = "#FBF8F3",
            TextPrimary = "#1F2B33",
            TextSecondary = "#4F5B62",
            TextDisabled = "#6B7479",
            ActionDefault = "#4A6272",
            ActionDisabled = "#6B7479",
            ActionDisabledBackground = "#E9E1D3",
            LinesDefault = "#E0D6C5",
            LinesInputs = "#857A68",
            TableLines = "#E6DDCE",
            Divider = "#E0D6C5",
        },
        PaletteDark = new PaletteDark
        {
            Primary = "#E0A35A",
            PrimaryContrastText = "#161D22",
            Secondary = "#9DB4C2",
            Tertiary = "#8FBF93",
            Info = "#9DB4C2",
            Success = "#8FBF93",
            Warning = "#E0A35A",
            Error = "#E58B7B",
            Dark = "#EDE7DD",
            SecondaryContrastText = "#161D22",
            TertiaryContrastText = "#161D22",
            InfoContrastText = "#161D22",
            SuccessContrastText = "#161D22",
            WarningContrastText = "#161D22",
            ErrorContrastText = "#161D22",
            DarkContrastText = "#161D22",
            Background = "#161D22",
            BackgroundGray = "#1C252B",
            Surface = "#1E272D",
            AppbarBackground = "#161D22",
            AppbarText = "#EDE7DD",
            DrawerBackground = "#161D22",
            TextPrimary = "#EDE7DD",
            TextSecondary = "#BDB8AF",
            TextDisabled = "#98948C",
            ActionDefault = "#9DB4C2",
            ActionDisabled = "#98948C",
            ActionDisabledBackground = "#2A343A",
            LinesDefault = "#36424A",
            LinesInputs = "#8C979E",
            TableLines = "#36424A",
            Divider = "#36424A",
        },
        Typography = new Typography
        {
            Default = new DefaultTypography { FontFamily = Sans, FontSize = "1rem", LineHeight = "1.5" },
            H1 = new H1Typography { FontFamily = Serif, FontSize = "1.9rem", FontWeight = "600", LineHeight = "1.2" },
            H2 = new H2Typography { FontFamily = Serif, FontSize = "1.35rem", FontWeight = "600", LineHeight = "1.3" },
            H3 = new H3Typography { FontFamily = Serif, FontSize = "1.1rem", FontWeight = "600", LineHeight = "1.3" },
            H6 = new H6Typography { FontFamily = Serif, FontSize = "1.1rem", FontWeight = "600" },
            Body1 = new Body1Typography { FontFamily = Sans, FontSize = "1rem" },
            Body2 = new Body2Typography { FontFamily = Sans, FontSize = "0.95rem" },
            Button = new ButtonTypography { FontFamily = Sans, FontSize = "1rem", FontWeight = "600", TextTransform = "none", LetterSpacing = "0" },
            Caption = new CaptionTypography { FontFamily = Sans, FontSize = "0.85rem", LetterSpacing = "0" },
        },
        LayoutProperties = new LayoutProperties { DefaultBorderRadius = "5px" },
    };
}
