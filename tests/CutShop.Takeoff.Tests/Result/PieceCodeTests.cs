using System.Globalization;
using CsCheck;

namespace CutShop.Takeoff.Tests.Result;

public sealed class PieceCodeTests
{
    private static readonly Gen<PieceCode> Codes =
        Gen.Int[0, int.MaxValue].Select(seed => { var random = new Random(seed); return PieceCode.Draw(random.Next); });

    [Fact]
    public void A_code_prints_and_reads_back() =>
        Codes.Sample(code =>
        {
            Assert.Matches("^[2-9AC-HJKMNP-RTV-Y]{4}-[2-9AC-HJKMNP-RTV-Y]{4}-[2-9AC-HJKMNP-RTV-Y]{4}$", code.ToString());
            Assert.Equal(code, PieceCode.Parse(code.ToString()).OrThrow());
            Assert.Equal(code, PieceCode.Parse(code.Plain.ToLowerInvariant()).OrThrow());
            Assert.Equal(code, PieceCode.Parse(" " + string.Join(' ', code.Plain.ToCharArray()) + "\n").OrThrow());
        });

    // By hand with the standard's recursion: eleven As leave the product 13, so the check value is (37 - 13) mod 36 = 24, an O.
    [Fact]
    public void A_drawing_whose_check_character_is_not_a_symbol_is_drawn_again()
    {
        Assert.Equal('O', CheckCharacter.Of("AAAAAAAAAAA"));
        var drawn = 0;
        var code = PieceCode.Draw(_ => drawn++ < 11 ? 8 : 1);
        Assert.Equal(22, drawn);
        Assert.Equal("333333333332", code.Plain);
    }

    [Fact]
    public void The_27_symbols_have_no_look_alikes()
    {
        Assert.Equal(27, PieceCode.Symbols.Distinct().Count());
        Assert.Empty(PieceCode.Symbols.Intersect("0O1ILUBSZ"));
        Assert.Empty(PieceCode.Symbols.Except(CheckCharacter.Alphabet));
    }

    // 27^11 drawings, counted by the product that the standard's recursion leaves: a count, not an estimate.
    [Fact]
    public void At_least_51_random_bits_remain_after_drawing_again()
    {
        var ways = new double[37];
        ways[36] = 1;
        for (var i = 0; i < 11; i++)
        {
            var next = new double[37];
            for (var product = 1; product <= 36; product++)
            {
                foreach (var symbol in PieceCode.Symbols)
                    next[Step(product, CheckCharacter.Alphabet.IndexOf(symbol))] += ways[product];
            }
            ways = next;
        }
        var kept = Enumerable.Range(1, 36).Where(p => PieceCode.Symbols.Contains(CheckCharacter.Alphabet[(37 - p) % 36])).Sum(p => ways[p]);
        Assert.Equal(5_559_060_566_555_523d, ways.Sum());
        Assert.Equal(4_169_295_424_905_594d, kept);
        Assert.InRange(Math.Log2(kept), 51, 52);
    }

    [Fact]
    public void Every_single_wrong_character_is_caught() =>
        Codes.Sample(code =>
        {
            for (var at = 0; at < PieceCode.SymbolCount; at++)
            {
                foreach (var symbol in PieceCode.Symbols.Where(s => s != code.Plain[at]))
                {
                    var wrong = code.Plain[..at] + symbol + code.Plain[(at + 1)..];
                    Assert.Equal(PieceCodeErrors.CheckDoesNotMatch.ToString(), PieceCode.Parse(wrong).Problem);
                }
            }
        }, iter: 200);

    // Not every swap is caught: of all states of the recursion and all pairs of different symbols, this many slip through.
    [Fact]
    public void Of_swapped_neighbours_40_in_25272_slip_through()
    {
        var (missed, all) = (0, 0);
        for (var product = 1; product <= 36; product++)
        {
            foreach (var a in PieceCode.Symbols.Select(s => CheckCharacter.Alphabet.IndexOf(s)))
            {
                foreach (var b in PieceCode.Symbols.Select(s => CheckCharacter.Alphabet.IndexOf(s)).Where(b => b != a))
                {
                    all++;
                    if (Step(Step(product, a), b) == Step(Step(product, b), a))
                        missed++;
                }
            }
        }
        Assert.Equal((40, 25_272), (missed, all));
    }

    [Theory]
    [InlineData("", "a piece code has 12 characters, this has 0; accepted: XXXX-XXXX-XXXX")]
    [InlineData("3333-3333-333", "a piece code has 12 characters, this has 11; accepted: XXXX-XXXX-XXXX")]
    [InlineData("3333-3333-3333-3", "a piece code has 12 characters, this has 13; accepted: XXXX-XXXX-XXXX")]
    [InlineData("O333-3333-3333", "no piece code has 'O' in it: accepted are 23456789 and the letters ACDEFGHJKMNPQRTVWXY")]
    [InlineData("33333333333é", "no piece code has 'é' in it: accepted are 23456789 and the letters ACDEFGHJKMNPQRTVWXY")]
    [InlineData("2222-2222-2222", "the last character does not match the others: a character is wrong or two are swapped; look at the label again")]
    public void A_bad_code_is_told_what_is_wrong(string text, string problem) =>
        Assert.Equal(problem, PieceCode.Parse(text).Problem);

    [Fact]
    public void Small_letters_are_read_the_same_in_every_culture()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("tr-TR");
            Assert.Contains("'i'", PieceCode.Parse("i").Problem, StringComparison.Ordinal);
            var code = PieceCode.Draw();
            Assert.Equal(code, PieceCode.Parse(code.ToString().ToLowerInvariant()).OrThrow());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void No_code_has_an_empty_text() => Assert.Equal("", default(PieceCode).ToString());

    /// <summary>The standard's step, written out once more for counting.</summary>
    private static int Step(int product, int value)
    {
        var sum = (product + value) % 36;
        return (sum == 0 ? 36 : sum) * 2 % 37;
    }

    [Theory]
    [InlineData("")]
    [InlineData("XXXX")]
    [InlineData("2345-6789-ACDO")]
    [InlineData("2345-6789-ACD2")]
    [InlineData("2345-6789-ACD3")]
    [InlineData("2345-6789-ACD4")]
    public void What_is_wrong_is_said_the_same_with_its_figures_apart(string typed)
    {
        var why = PieceCode.Parse(typed).Reason;
        Assert.Equal(PieceCode.Parse(typed).Problem, why?.ToString());
    }
}
