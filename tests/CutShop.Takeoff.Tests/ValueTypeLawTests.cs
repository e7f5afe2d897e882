using System.Globalization;
using System.Reflection;
using System.Runtime.CompilerServices;

namespace CutShop.Takeoff.Tests;

/// <summary>
/// Laws of every public value type of the program, found by reflection. Generic ones are left out: what they hold decides.
/// </summary>
public sealed class ValueTypeLawTests
{
    private const int Values = 16;

    /// <summary>Geometry and figures with fractions. Their text is the compiler's own, for a debugger, and no person reads it.</summary>
    private static readonly Type[] TextForADebugger = [typeof(Cylinder), typeof(HangingRope), typeof(Point), typeof(Point3), typeof(QrPlace), typeof(RopeWeight), typeof(ScrewHole), typeof(SolidWrap), typeof(Turn)];

    /// <summary>Other digits, separators, signs, calendars and capital letters than the program's own.</summary>
    private static readonly CultureInfo[] Cultures = [.. new[] { "ar-SA", "de-DE", "fa-IR", "hi-IN", "sv-SE", "th-TH", "tr-TR" }.Select(CultureInfo.GetCultureInfo)];

    public static TheoryData<Type> Types => [.. new[] { typeof(Length), typeof(PlanAims), typeof(Money), typeof(Figures) }.SelectMany(type => type.Assembly.GetExportedTypes())
        .Where(type => type is { IsValueType: true, IsEnum: false, IsGenericType: false })];

    [Fact]
    public void The_known_value_types_are_found() =>
        Assert.Superset(new HashSet<Type> { typeof(Length), typeof(Share), typeof(PieceCode), typeof(Treatment), typeof(Money), typeof(PlanAims) }, Types.Select(row => row.Data).ToHashSet());

    [Theory]
    [MemberData(nameof(Types))]
    public void It_cannot_change(Type type) => Assert.NotNull(type.GetCustomAttribute<IsReadOnlyAttribute>());

    [Theory]
    [MemberData(nameof(Types))]
    public void Equality_is_the_same_by_method_operator_and_hash(Type type)
    {
        var (equal, unequal) = (Operator(type, "op_Equality"), Operator(type, "op_Inequality"));
        foreach (var (a, b) in Pairs(type))
        {
            Assert.Equal(a.Equals(b), equal(a, b));
            Assert.Equal(!a.Equals(b), unequal(a, b));
            Assert.Equal(a.Equals(b), b.Equals(a));
            Assert.True(!a.Equals(b) || a.GetHashCode() == b.GetHashCode());
        }
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void Order_is_the_same_by_method_and_operator_and_agrees_with_equality(Type type)
    {
        var compare = type.GetMethod(nameof(IComparable.CompareTo), [type]);
        Assert.Equal(typeof(IComparable<>).MakeGenericType(type).IsAssignableFrom(type), type.GetMethod("op_LessThan", [type, type]) is not null);
        if (compare is null)
            return;
        var (less, more, notMore, notLess) = (Operator(type, "op_LessThan"), Operator(type, "op_GreaterThan"), Operator(type, "op_LessThanOrEqual"), Operator(type, "op_GreaterThanOrEqual"));
        foreach (var (a, b) in Pairs(type))
        {
            var order = (int)compare.Invoke(a, [b])!;
            Assert.Equal(-Math.Sign(order), Math.Sign((int)compare.Invoke(b, [a])!));
            Assert.Equal(a.Equals(b), order == 0);
            Assert.Equal((order < 0, order > 0, order <= 0, order >= 0), (less(a, b), more(a, b), notMore(a, b), notLess(a, b)));
        }
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void Its_default_is_a_value_like_any_other(Type type)
    {
        var nothing = Activator.CreateInstance(type)!;
        Assert.True(nothing.Equals(Activator.CreateInstance(type)));
        Assert.Equal(nothing.GetHashCode(), Activator.CreateInstance(type)!.GetHashCode());
        Assert.NotNull(nothing.ToString());
    }

    [Theory]
    [MemberData(nameof(Types))]
    public void Its_text_is_the_same_in_every_culture(Type type)
    {
        if (TextForADebugger.Contains(type))
            return;
        foreach (var value in ValuesOf(type))
        {
            var text = In(CultureInfo.InvariantCulture, value);
            Assert.All(Cultures, culture => Assert.Equal(text, In(culture, value)));
        }
    }

    private static string In(CultureInfo culture, object value)
    {
        var before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = culture;
        try
        {
            return value.ToString()!;
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static Func<object, object, bool> Operator(Type type, string name)
    {
        var method = type.GetMethod(name, [type, type]);
        Assert.True(method is not null, $"{type.Name} has no {name}.");
        return (a, b) => (bool)method.Invoke(null, [a, b])!;
    }

    private static IEnumerable<(object A, object B)> Pairs(Type type)
    {
        var values = ValuesOf(type);
        return values.SelectMany(a => values.Select(b => (a, b)));
    }

    /// <summary>The default and some others, few enough that some are equal; the same in every run.</summary>
    private static List<object> ValuesOf(Type type)
    {
        var chance = new Random(1);
        return [Activator.CreateInstance(type)!, .. Enumerable.Range(1, Values).Select(_ => Some(type, chance)!)];
    }

    private static object? Some(Type type, Random chance)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner)
            return chance.Next(2) == 0 ? null : Some(inner, chance);
        if (type.IsEnum)
            return Enum.GetValues(type).GetValue(chance.Next(Enum.GetValues(type).Length));
        if (type == typeof(bool))
            return chance.Next(2) == 0;
        if (type == typeof(string))
            return chance.Next(2) == 0 ? "333333333332" : "ACDEFGHJKMNP";
        if (type == typeof(long))
            return chance.Next(-2, 3) * 1_234_567_890_123;
        if (type.IsPrimitive || type == typeof(decimal))
            return Convert.ChangeType(chance.Next(4), type, CultureInfo.InvariantCulture);
        if (!type.IsValueType)
            return null;
        var value = Activator.CreateInstance(type)!;
        foreach (var field in type.GetFields(BindingFlags.Instance | BindingFlags.Public | BindingFlags.NonPublic))
            field.SetValue(value, Some(field.FieldType, chance));
        return value;
    }
}
