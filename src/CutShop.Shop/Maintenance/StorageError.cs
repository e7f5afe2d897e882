using CutShop.Shop.Tickets;
using CutShop.Takeoff.Words;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace CutShop.Shop.Maintenance;

/// <summary>Why the shop's database cannot be written or read just now, for people: the machine's trouble, not a bug and not theirs.</summary>
/// <param name="Said">What is wrong and what to do, in a sentence or two.</param>
public sealed record StorageError(Sentence Said)
{
    /// <summary>What is wrong and what to do, in English.</summary>
    public string Text => Said.ToString();

    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int InputOutput = 10;
    private const int Damaged = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NoDatabase = 26;

    // Of a server.
    private const string ServerDiskFull = "53100";
    private const string NoLockInTime = "55P03";
    private const string ServerStops = "57P01";
    private const string ServerCrashed = "57P02";
    private const string ServerStarts = "57P03";

    // Of the system's own calls.
    private const int NoSpace = 28;
    private const int ReadOnlyDisk = 30;
    private const int NoSpaceOnWindows = 0x70;

    /// <summary>True where the file itself is at fault, and no waiting or making room mends it.</summary>
    public bool IsOfFile { get; private init; }

    /// <summary>True where others are busy with the database, and a later try may find it free.</summary>
    public bool IsOfOthers { get; private init; }

    /// <summary>True where the answer to the last step of a change may have been lost on its way, so that nobody knows whether it is stored.</summary>
    public bool IsUnsure { get; private init; }

    private static readonly StorageError DiskFull = Named("DiskFull");
    private static readonly StorageError KeptBusy = Named("KeptBusy") with { IsOfOthers = true };
    private static readonly StorageError NoAnswer = Named("NoAnswer") with { IsUnsure = true };
    private static readonly StorageError DiskReadOnly = Named("DiskReadOnly");

    /// <summary>The trouble that an exception shows, or null where it is something else.</summary>
    public static StorageError? Of(Exception? exception) => exception switch
    {
        SqliteException e => OfCode(e.SqliteErrorCode),
        PostgresException { SqlState: ServerDiskFull } => DiskFull,
        PostgresException { SqlState: NoLockInTime } => KeptBusy,
        PostgresException { SqlState: ServerStops or ServerCrashed or ServerStarts } => NoAnswer,
        NpgsqlException { InnerException: IOException or TimeoutException or System.Net.Sockets.SocketException } => NoAnswer,
        DamagedPartException e => Named("DamagedPart", e.Message) with { IsOfFile = true },
        UnauthorizedAccessException => DiskReadOnly,
        IOException { HResult: var code } when (code & 0xFFFF) is NoSpace or NoSpaceOnWindows => DiskFull,
        IOException { HResult: ReadOnlyDisk } => DiskReadOnly,
        AggregateException { InnerException: { } inner } => Of(inner),
        _ => null,
    };

    private static StorageError Named(string key, params IReadOnlyList<object?> values) => new(new Sentence(StorageErrorWords.List, key, values));

    private static StorageError? OfCode(int code) => code switch
    {
        Full => DiskFull,
        ReadOnly => DiskReadOnly,
        Busy or Locked => KeptBusy,
        InputOutput => Named("DiskFails"),
        Damaged or NoDatabase => Named("DatabaseDamaged") with { IsOfFile = true },
        CannotOpen => Named("CannotOpen"),
        _ => null,
    };
}
