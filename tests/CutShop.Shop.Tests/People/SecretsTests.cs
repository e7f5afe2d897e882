namespace CutShop.Shop.Tests.People;

public sealed class SecretsTests : IDisposable
{
    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>The first four were taken before; the others are of the kinds that NIST SP 800-63B 5.1.1.2 names: dictionary words, repetitions, sequences, the service's and the person's own names.</summary>
    [Theory]
    [InlineData("password12")]
    [InlineData("qwertyuiop")]
    [InlineData("1234567890")]
    [InlineData("Passw0rd!!")]
    [InlineData("P@ssw0rd2026")]
    [InlineData("Summer2026!")]
    [InlineData("iloveyou1234")]
    [InlineData("letmein12345")]
    [InlineData("1qaz2wsx3edc")]
    [InlineData("poiuytrewq")]
    [InlineData("abcabcabcabc")]
    [InlineData("xyxyxyxyxyxy")]
    [InlineData("aaaaaaaaaaaa")]
    [InlineData("contraseña2026")]
    [InlineData("Lanternquay1")]
    [InlineData("quay-lantern")]
    [InlineData("cutshop2026")]
    [InlineData("ropeandpost")]
    [InlineData("berrin berrin")]
    [InlineData("Kjell12345678")]
    public async Task A_password_that_a_guesser_tries_first_is_refused(string password)
    {
        await new LetterheadShelf(_shop.Database).SetAsync(new("Lantern Quay", ""), "test", Cancel);
        var answer = await new PeopleShelf(_shop.Database).AddAsync(password.StartsWith("Kj", StringComparison.Ordinal) ? "Kjell" : "Berrin", Role.Desk, password, "test", Cancel);
        Assert.Equal("password", answer.Problem?.Field);
    }

    [Theory]
    [InlineData("four short words here")]
    [InlineData("seven green bollards")]
    [InlineData("correct horse battery staple")]
    [InlineData("tr0ub4dor&3x")]
    [InlineData("mQ7#vLp2xz")]
    [InlineData("the tape is on the wall")]
    [InlineData("ñandú y colibrí")]
    public async Task A_password_of_several_words_or_a_mix_of_characters_is_taken(string password)
    {
        var answer = await new PeopleShelf(_shop.Database).AddAsync("Berrin", Role.Desk, password, "test", Cancel);
        Assert.Null(answer.Problem);
    }

    [Fact]
    public void Every_password_that_the_program_draws_is_taken()
    {
        for (var i = 0; i < 1000; i++)
            Assert.False(PasswordRules.IsEasy(PeopleShelf.DrawPassword(), "Berrin", "Lantern Quay"));
    }

    [Fact]
    public void A_password_as_long_as_is_taken_is_judged_at_once()
    {
        var start = System.Diagnostics.Stopwatch.GetTimestamp();
        Assert.True(PasswordRules.IsEasy(new string('a', Secrets.LongestPassword)));
        PasswordRules.IsEasy(string.Concat(Enumerable.Repeat("p4ssw0rd", 25)));
        Assert.True(System.Diagnostics.Stopwatch.GetElapsedTime(start) < TimeSpan.FromSeconds(2));
    }

    /// <summary>1212, 2580 and 1995 were taken before; the others are among the most usual in counts that were published (from memory).</summary>
    [Theory]
    [InlineData("1212")]
    [InlineData("2580")]
    [InlineData("1995")]
    [InlineData("2026")]
    [InlineData("1234")]
    [InlineData("4321")]
    [InlineData("7890")]
    [InlineData("0000")]
    [InlineData("1122")]
    [InlineData("1221")]
    [InlineData("2468")]
    [InlineData("1004")]
    [InlineData("6969")]
    [InlineData("0852")]
    [InlineData("123123")]
    [InlineData("147258")]
    [InlineData("112233")]
    [InlineData("123456")]
    [InlineData("12345678")]
    public void A_PIN_that_many_choose_is_refused(string pin) => Assert.Equal("pin", Secrets.ProblemWithPin(pin)?.Field);

    [Theory]
    [InlineData("4071")]
    [InlineData("8163")]
    [InlineData("407193")]
    [InlineData("40719358")]
    public void Any_other_PIN_is_taken(string pin) => Assert.Null(Secrets.ProblemWithPin(pin));

    [Fact]
    public void Of_all_PINs_of_four_digits_few_are_refused() =>
        Assert.InRange(Enumerable.Range(0, 10_000).Count(pin => Pins.IsUsual(pin.ToString("0000", System.Globalization.CultureInfo.InvariantCulture))), 300, 600);

    public void Dispose() => _shop.Dispose();
}
