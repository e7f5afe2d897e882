using System.Reflection;
using CutShop.Testing.Trust;

namespace CutShop.Shop.Tests.Trust;

/// <summary>A disk that fails at any statement of any operation leaves nothing half done.</summary>
public sealed class WriteFaultTests
{
    /// <summary>Made of other operations' transactions and one of its own, which its own tests break: it hashes slowly, twice for each of four people.</summary>
    private static readonly string[] Composed = ["DemoPeople.MakeAsync"];

    public static TheoryData<int> Numbers => [.. Enumerable.Range(0, WriteOperations.All.Count)];

    [Theory]
    [MemberData(nameof(Numbers))]
    public async Task Each_statement_that_fails_once_leaves_all_or_nothing_and_the_same_again_is_done(int number)
    {
        var answer = await WriteFaults.BreakEachAsync(WriteOperations.All[number], timesEach: 1);
        Assert.Empty(answer.Problems);
        Assert.True(answer.Statements > 0, "It writes nothing.");
        Assert.Equal(answer.Statements, answer.Faults);
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public async Task Each_statement_that_goes_on_failing_leaves_all_or_nothing_until_it_is_mended(int number)
    {
        var answer = await WriteFaults.BreakEachAsync(WriteOperations.All[number], timesEach: 3);
        Assert.Empty(answer.Problems);
        Assert.Equal(answer.Statements * 3, answer.Faults);
    }

    [Fact]
    public void Every_public_operation_that_can_write_is_in_the_table() => Assert.Equal(
        typeof(ShopDatabase).Assembly.GetExportedTypes()
            .Where(type => type != typeof(ShopDatabase) && type.GetConstructors().Any(constructor => constructor.GetParameters().Any(parameter => parameter.ParameterType == typeof(ShopDatabase))))
            .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Instance).Where(IsAsynchronous).Select(method => $"{type.Name}.{method.Name}"))
            .Distinct().Except(Composed).Order(StringComparer.Ordinal),
        WriteOperations.All.Select(operation => operation.Name).Distinct().Order(StringComparer.Ordinal));

    private static bool IsAsynchronous(MethodInfo method) => typeof(Task).IsAssignableFrom(method.ReturnType);
}
