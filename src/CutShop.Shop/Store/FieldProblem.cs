namespace CutShop.Shop.Store;

/// <summary>What is wrong with a field of a form.</summary>
/// <param name="Field">The field.</param>
/// <param name="Value">What was typed.</param>
/// <param name="Text">What is wrong and what is accepted.</param>
public sealed record FieldProblem(string Field, string Value, string Text);
