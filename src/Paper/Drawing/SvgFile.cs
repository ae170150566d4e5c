namespace Ramwright.Paper.Drawing;

/// <summary>A picture as a file of its own: the element of <see cref="Svg"/> with its style sheet in it, in the light palette.</summary>
public static class SvgFile
{
    public static string Write(Picture picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        var element = Svg.Write(picture);
        var head = element.IndexOf('>', StringComparison.Ordinal) + 1;
        return $"<?xml version=\"1.0\" encoding=\"utf-8\"?>\n{element[..head]}<style>{PictureCss.Sheet}</style>{element[head..]}\n";
    }
}
