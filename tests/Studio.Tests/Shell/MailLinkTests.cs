using Studio.Shell;

namespace Studio.Tests.Shell;

/// <summary>RFC 6068: what is not a letter, a digit or <c>- . _ ~</c> is percent-encoded, the @ before the domain stays.</summary>
public sealed class MailLinkTests
{
    [Theory]
    [InlineData("anna@example.org", "mailto:anna@example.org")]
    [InlineData(" anna@example.org ", "mailto:anna@example.org")]
    [InlineData("a?cc=b@example.org", "mailto:a%3Fcc%3Db@example.org")]
    [InlineData("a&bcc=b@example.org", "mailto:a%26bcc%3Db@example.org")]
    [InlineData("a%0D%0Abcc:b@example.org", "mailto:a%250D%250Abcc%3Ab@example.org")]
    [InlineData("a,b@example.org", "mailto:a%2Cb@example.org")]
    [InlineData("a@b@example.org", "mailto:a%40b@example.org")]
    public void An_address_reaches_the_mail_program_as_one_address(string address, string link) => MailLink.To(address).ShouldBe(link);

    [Theory]
    [InlineData("")]
    [InlineData(null)]
    [InlineData("anna")]
    [InlineData("anna@")]
    [InlineData("@example.org")]
    [InlineData("anna@example.org\r\nbcc: b@example.org")]
    [InlineData("anna@exam\nple.org")]
    [InlineData("anna @example.org")]
    public void What_cannot_be_an_address_is_no_link(string? address)
    {
        MailLink.To(address).ShouldBeNull();
        MailLink.To(address, "About it").ShouldBe("mailto:?subject=About%20it");
    }

    [Fact]
    public void Words_keep_their_lines_and_a_subject_is_one() =>
        MailLink.To("anna@example.org", "Heather & hive\nbcc: x", "Dear Anna,\n100 % yours").ShouldBe("mailto:anna@example.org?subject=Heather%20%26%20hive%20bcc%3A%20x&body=Dear%20Anna%2C%0D%0A100%20%25%20yours");

    [Fact]
    public void Nowhere_else_is_a_mail_link_written() =>
        Directory.EnumerateFiles(Path.Combine(Sources.Root(), "src"), "*", SearchOption.AllDirectories)
            .Where(f => Path.GetExtension(f) is ".cs" or ".razor" or ".js" && !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Where(f => File.ReadAllText(f).Contains("mailto:", StringComparison.OrdinalIgnoreCase))
            .Select(Path.GetFileName).ShouldBe(["MailLink.cs"]);
}
