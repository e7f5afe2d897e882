using System.Data;
using System.Globalization;
using CutShop.Takeoff;
using Dapper;

namespace CutShop.Shop;

/// <summary>How our values stand in columns: lengths as nanometres, dates and UTC times as ISO 8601 text, codes as their symbols, money as ten-thousandths, yes and no as 1 and 0.</summary>
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
        return true;
    });

    /// <summary>Tells Dapper of our types, once a process.</summary>
    public static void Register() => _ = Registered.Value;

    /// <summary>A computed date column, where empty text stands for no date.</summary>
    public static DateOnly? DateOrNone(string text) => text.Length == 0 ? null : IsoDate.Read(text);

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

    private sealed class FlagColumn : SqlMapper.TypeHandler<bool>
    {
        public override void SetValue(IDbDataParameter parameter, bool value) => parameter.Value = value ? 1L : 0L;

        // A condition that a server computes is a truth value there.
        public override bool Parse(object value) => value is bool flag ? flag : (long)value == 1;
    }
}
