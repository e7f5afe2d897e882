namespace CutShop.Testing.Fuzz;

/// <summary>Codes of pieces mistyped: a symbol wrong, missing, doubled, moved, of another alphabet.</summary>
internal static class CodeStrings
{
    /// <summary>A code and what came of it: the same seed changes codes in the same way, though each code is drawn anew.</summary>
    public static (PieceCode Meant, string Typed) Make(int seed)
    {
        var random = new Random(seed);
        var code = PieceCode.Draw();
        var typed = random.Next(2) == 0 ? code.Plain : code.ToString();
        var at = random.Next(typed.Length);
        return (code, random.Next(7) switch
        {
            0 => typed[..at] + random.Of(PieceCode.Symbols.ToCharArray()) + typed[(at + 1)..],
            1 => typed.Remove(at, 1),
            2 => typed.Insert(at, typed[at].ToString()),
            3 => typed.Insert(at, Hostile.Any(random)),
            4 => typed[..at] + (char)random.Next(char.MaxValue + 1) + typed[(at + 1)..],
            5 => typed.ToLowerInvariant().Replace('-', ' '),
            _ => Hostile.Any(random),
        });
    }
}
