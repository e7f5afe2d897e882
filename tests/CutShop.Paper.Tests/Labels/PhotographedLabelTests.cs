using CutShop.Testing.Rendering;
using SkiaSharp;

namespace CutShop.Paper.Tests.Labels;

/// <summary>What a phone reads off the label as it is printed, held against an independent reader.</summary>
public sealed class PhotographedLabelTests
{
    private const int DotsPerInch = 406;
    private const int Pictures = 24;

    [Fact]
    public void Every_picture_of_a_fresh_label_is_read() => Assert.Equal(Pictures, Read(PhotoOf.FreshLabel));

    [Fact]
    public void Every_blurred_picture_is_read() => Assert.Equal(Pictures, Read(PhotoOf.Blurred));

    [Fact]
    public void Every_tilted_picture_is_read() => Assert.Equal(Pictures, Read(PhotoOf.Tilted));

    // A smear can lie so that this reader does not find the code, whatever its level: docs/site-pack.md tells how often.
    [Fact]
    public void Five_of_six_labels_with_a_tenth_of_the_data_smeared_are_read() => Assert.InRange(Read(PhotoOf.Smeared), Pictures * 5 / 6, Pictures);

    [Fact]
    public void Five_of_six_labels_that_are_blurred_tilted_and_smeared_at_once_are_read() => Assert.InRange(Read(PhotoOf.Everything), Pictures * 5 / 6, Pictures);

    [Fact]
    public void What_covers_a_corner_that_finds_the_code_is_not_read_so_the_reader_is_no_rubber_stamp()
    {
        using var label = Label();
        var code = Square();
        using (var canvas = new SKCanvas(label))
        using (var paint = new SKPaint { Color = SKColors.White })
            canvas.DrawRect(code.Left, code.Top, code.Module * 8, code.Module * 8, paint);
        Assert.False(LabelPhoto.IsRead(label, code, PhotoOf.FreshLabel, 1, LabelPdfTests.Address));
    }

    private static int Read(PhotoOf seen)
    {
        using var label = Label();
        var code = Square();
        return Enumerable.Range(1, Pictures).Count(seed => LabelPhoto.IsRead(label, code, seen, seed, LabelPdfTests.Address));
    }

    private static SKBitmap Label() => Poppler.Render(LabelPdfTests.Pdf(LabelStock.Default), DotsPerInch)[0];

    private static CodeSquare Square() => CodeSquare.On(LabelPdfTests.Address, LabelStock.Default, DotsPerInch);
}
