using System.Text;

namespace CutShop.Testing.Fuzz;

/// <summary>A good sheet (CSV) with something done to it: cells swapped, quotes and separators put in, rows doubled, cut off, bytes flipped.</summary>
internal static class SheetMutations
{
    private const int MostChanges = 4;

    private const string Good =
        """
        number,customer,due,material,diameter,shrink,round up,one lot
        LQ-9,"Quay, north",2027-03-12,manila,1 1/2 in,12.5%,1/4 in,yes

        line,post,shape,across,height,turn,clear,centres,rise,sag
        A,A1,square,5 1/2 in,42 in,,72 in,,,
        ,A2,square,5 1/2 in,42 in,90 left,,77 1/2 in,-2 in,4 in
        ,A3,square,5 1/2 in,42 in,,,,,
        B,B1,round,200 mm,42 in,,1.83 m,,,
        B,B2,round,200 mm,42 in,,,,,

        line,row,height,sag,slack,start,finish,between,at,material,diameter
        A,top,36 in,6 in,,stopped,knot,,,,
        B,rope,30 in,6 in,,wrap 2,wrap 2,,B2: wrap 2.5,,
        """;

    private static readonly string[] Marks = ["\"", "\"\"", ",", ";", "\t", "\r", "\n", "\r\n", "\uFEFF", "\0", "=1+1", ":", ";;", "A2:", ": wrap 2"];

    /// <summary>The sheet of a seed: the same seed gives the same sheet.</summary>
    public static byte[] Make(int seed)
    {
        var random = new Random(seed);
        var text = Good;
        for (var i = random.Next(MostChanges); i >= 0; i--)
            text = Changed(text, random);
        var bytes = Encoding.UTF8.GetBytes(text);
        if (bytes.Length > 0 && random.Next(6) == 0)
            bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
        return bytes;
    }

    private static string Changed(string text, Random random)
    {
        var rows = text.Split('\n');
        var row = random.Next(rows.Length);
        switch (random.Next(7))
        {
            case 0:
                return text.Insert(random.Next(text.Length + 1), random.Of(Marks));
            case 1:
                return text[..random.Next(text.Length + 1)];
            case 2:
                var other = random.Next(rows.Length);
                (rows[row], rows[other]) = (rows[other], rows[row]);
                break;
            case 3:
                rows[row] += "\n" + rows[row];
                break;
            case 4:
                rows[row] = string.Concat(Enumerable.Repeat(rows[row], random.Next(200)));
                break;
            default:
                var cells = rows[row].Split(',');
                cells[random.Next(cells.Length)] = Hostile.Any(random);
                rows[row] = string.Join(',', cells);
                break;
        }
        return string.Join('\n', rows);
    }
}
