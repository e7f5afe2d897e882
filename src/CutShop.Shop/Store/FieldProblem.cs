using CutShop.Takeoff.Words;

namespace CutShop.Shop.Store;

/// <summary>What is wrong with a field of a form.</summary>
/// <param name="Field">The field.</param>
/// <param name="Value">What was typed.</param>
/// <param name="Said">What is wrong and what is accepted, to be said in the reader's language.</param>
public sealed record FieldProblem(string Field, string Value, Sentence Said)
{
    /// <summary>What is wrong and what is accepted, in English.</summary>
    public string Text => Said.ToString();
}
