using System.Text;
using System.Text.Json;
using Studio.Commands;
using Studio.Engine;

namespace Studio.Tests.Commands;

public sealed class CalcCommandTests
{
    private const string Price = """{ "currency": "EUR", "packaging": "12.50" }""";

    [Fact]
    public void Reads_standard_input_where_no_file_is_named() => Total(Run("price", [], Price)).ShouldBe("12.50");

    [Fact]
    public void A_dash_is_standard_input() => Total(Run("price", ["-"], Price)).ShouldBe("12.50");

    [Fact]
    public void Reads_a_file_with_or_without_a_byte_order_mark()
    {
        var file = Path.GetTempFileName();
        try
        {
            foreach (var mark in new[] { false, true })
            {
                File.WriteAllText(file, Price, new UTF8Encoding(mark));
                Total(Run("price", [file], "")).ShouldBe("12.50");
            }
        }
        finally
        {
            File.Delete(file);
        }
    }

    [Theory]
    [InlineData("price", "no/such/file.json", "there is none of that name")]
    [InlineData("price", "/", "folder")]
    [InlineData("price", "", "cannot be read")]
    [InlineData("boil", "no/such/file.json", "There is no calculation 'boil'")]
    [InlineData(null, "", "Name a calculation")]
    public void What_cannot_be_found_is_answered_in_json(string? what, string file, string says) => Refusal(Run(what, [file], "")).ShouldContain(says);

    [Fact]
    public void More_than_one_file_is_refused() => Refusal(Run("price", ["a", "b"], "")).ShouldContain("One file");

    [Fact]
    public void Text_that_is_not_utf8_is_refused() => Refusal(CalcCommand.Run("price", [], () => new MemoryStream([0x7B, 0xE9, 0x7D]))).ShouldContain("UTF-8");

    [Fact]
    public void An_endless_input_is_refused() => Refusal(CalcCommand.Run("price", [], () => new MemoryStream(new byte[17 * 1024 * 1024]))).ShouldContain("16 MB");

    [Fact]
    public void The_command_takes_any_words_without_an_error_of_its_own()
    {
        foreach (var words in new[] { "", "price", "price a.json", "price a b", "nothing --strange" })
        {
            CalcCommand.Create().Parse(words).Errors.ShouldBeEmpty(words);
        }
    }

    private static Answer Run(string? what, string[] files, string input) => CalcCommand.Run(what, files, () => new MemoryStream(Encoding.UTF8.GetBytes(input)));

    private static string? Total(Answer answer) => JsonElement.Parse(answer.Json).GetProperty("total").GetString();

    private static string Refusal(Answer answer)
    {
        answer.ExitCode.ShouldBe(2);
        return JsonElement.Parse(answer.Json).GetProperty("errors")[0].GetProperty("message").GetString()!;
    }
}
