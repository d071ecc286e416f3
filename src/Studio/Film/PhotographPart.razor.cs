using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Studio.Data.Files;
using Studio.Pieces;
using Studio.SignIn;

namespace Studio.Film;

/// <summary>The photographs of a piece, and the pictures there are to choose from.</summary>
public sealed partial class PhotographPart
{
    private IReadOnlyList<FilmPicture> pictures = [];
    private int commissionId;
    private string paper = "";

    [Inject]
    private FilmBook Book { get; set; } = null!;

    [Inject]
    private Who Who { get; set; } = null!;

    private string Together => FormattableString.Invariant($"/papers/photographs/{Session.Piece.Id}.pdf{(paper.Length > 0 ? "?paper=" + paper : "")}");

    protected override async Task OnParametersSetAsync()
    {
        if (commissionId != Session.Piece.CommissionId)
        {
            commissionId = Session.Piece.CommissionId;
            pictures = await Book.PicturesAsync(commissionId);
        }
    }

    private void Add() => Session.Do("", () => Session.Piece.Sheets.Add(FilmStart.In(Session.Piece, Session.Good)));

    private async Task<(FilmPicture? Picture, string? Refusal)> TakeInAsync(IBrowserFile file)
    {
        if (file.Size > PhotoStore.LargestBytes)
        {
            return (null, "The file is larger than 40 MB. Save the picture smaller, or as a JPEG, and choose it again.");
        }

        await using var content = file.OpenReadStream(PhotoStore.LargestBytes);
        var answer = await Book.TakeInAsync(commissionId, content, file.Name, await Who.NameAsync());
        if (answer.Picture is not null)
        {
            pictures = await Book.PicturesAsync(commissionId);
        }

        return answer;
    }
}
