using CutShop.Shop.Store;

namespace CutShop.Web.People;

/// <summary>How a form ties a field to what is wrong with it.</summary>
public static class Fields
{
    /// <summary>The value of <c>aria-invalid</c>.</summary>
    public static string Invalid(FieldProblem? problem, string field) => problem?.Field == field ? "true" : "false";

    /// <summary>The value of <c>aria-describedby</c>, or null.</summary>
    public static string? DescribedBy(FieldProblem? problem, string field) => problem?.Field == field ? $"{field}-problem" : null;
}
