using System.Data;
using System.Globalization;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;
using Dapper;

namespace CutShop.Shop.Store;

/// <summary>
/// How our values are stored: lengths as nanometres, dates and UTC times as ISO 8601 text, codes as their symbols, money as
/// ten-thousandths, yes and no as 1 and 0; a kind of rope has five columns.
/// </summary>
internal static class SqlTypes
{
    private const string TimeFormat = "yyyy-MM-dd'T'HH:mm:ss.fff'Z'";

    private static readonly Lazy<bool> Registered = new(() =>
    {
        DefaultTypeMap.MatchNamesWithUnderscores = true;
        SqlMapper.AddTypeHandler(new LengthColumn());
        SqlMapper.AddTypeHandler(new DateColumn());
        SqlMapper.RemoveTypeMap(typeof(DateTimeOffset));
        SqlMapper.RemoveTypeMap(typeof(DateOnly));
        SqlMapper.RemoveTypeMap(typeof(DateOnly?));
        SqlMapper.RemoveTypeMap(typeof(bool));
        SqlMapper.RemoveTypeMap(typeof(bool?));
        SqlMapper.AddTypeHandler(new TimeColumn());
        SqlMapper.AddTypeHandler(new CodeColumn());
        SqlMapper.AddTypeHandler(new MoneyColumn());
        SqlMapper.AddTypeHandler(new FlagColumn());
        SqlMapper.AddTypeHandler(new RopeColumn());
        return true;
    });

    /// <summary>Tells Dapper of our types, once a process.</summary>
    public static void Register() => _ = Registered.Value;

    /// <summary>SQL: the kind of rope of a table's row as one column, which <see cref="RopeKind"/> is read from.</summary>
    public static string RopeOf(string table) =>
        $"{table}.material || ' ' || {table}.diameter_nm || ' ' || {table}.preshrunk || ' ' || {table}.colour || '\n' || {table}.construction";

    /// <summary>SQL: whether a table's row is of the kind whose properties are the statement's values.</summary>
    public static string IsRope(string table) => $"({Columns(table)}) = ({RopeKind.Values})";

    /// <summary>SQL: whether the rows of two tables are of the same kind of rope.</summary>
    public static string SameRope(string one, string other) => $"({Columns(one)}) = ({Columns(other)})";

    /// <summary>SQL: the columns of the kind of rope of a table, by which its rows are sorted and grouped.</summary>
    public static string Columns(string table) => string.Join(", ", RopeKind.Columns.Split(", ").Select(column => $"{table}.{column}"));

    private sealed class LengthColumn : SqlMapper.TypeHandler<Length>
    {
        public override void SetValue(IDbDataParameter parameter, Length value) => parameter.Value = value.Nanometres;

        public override Length Parse(object value) => Length.FromNanometres((long)value);
    }

    private sealed class DateColumn : SqlMapper.TypeHandler<DateOnly>
    {
        public override void SetValue(IDbDataParameter parameter, DateOnly value) =>
            parameter.Value = IsoDate.Text(value);

        public override DateOnly Parse(object value) => IsoDate.Read((string)value);
    }

    private sealed class TimeColumn : SqlMapper.TypeHandler<DateTimeOffset>
    {
        public override void SetValue(IDbDataParameter parameter, DateTimeOffset value) =>
            parameter.Value = value.UtcDateTime.ToString(TimeFormat, CultureInfo.InvariantCulture);

        public override DateTimeOffset Parse(object value) => new(
            DateTime.ParseExact((string)value, TimeFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal));
    }

    private sealed class CodeColumn : SqlMapper.TypeHandler<PieceCode>
    {
        public override void SetValue(IDbDataParameter parameter, PieceCode value) => parameter.Value = value.Plain;

        public override PieceCode Parse(object value) => PieceCode.Parse((string)value).OrThrow();
    }

    private sealed class MoneyColumn : SqlMapper.TypeHandler<Money>
    {
        public override void SetValue(IDbDataParameter parameter, Money value) => parameter.Value = value.TenThousandths;

        public override Money Parse(object value) => Money.FromTenThousandths((long)value);
    }

    /// <summary>Of a column as <see cref="RopeOf"/> makes it. A statement takes the parts of a kind one by one.</summary>
    private sealed class RopeColumn : SqlMapper.TypeHandler<RopeKind>
    {
        public override void SetValue(IDbDataParameter parameter, RopeKind? value) => throw new NotSupportedException("A kind of rope has a column for each part.");

        public override RopeKind Parse(object value) => ((string)value).Split(' ', 4) is [var material, var diameter, var preshrunk, var words]
            && words.Split('\n', 2) is [var colour, var construction]
            ? new(Rope.Materials[material], Length.FromNanometres(long.Parse(diameter, CultureInfo.InvariantCulture)), construction, colour, preshrunk == "1")
            : throw new InvalidDataException($"\"{value}\" is no kind of rope.");
    }

    private sealed class FlagColumn : SqlMapper.TypeHandler<bool>
    {
        public override void SetValue(IDbDataParameter parameter, bool value) => parameter.Value = value ? 1L : 0L;

        // A condition that a server computes is a truth value there.
        public override bool Parse(object value) => value is bool flag ? flag : (long)value == 1;
    }
}
