namespace Ramwright.App.Verbs;

/// <summary>Small files that the examples read. Invented readings of the made-up Corrie 85.</summary>
internal static class ExampleFiles
{
    /// <summary>Budgets: the one of docs/getting-started, and one in which a coarse display outweighs all else.</summary>
    public static IReadOnlyDictionary<string, string> Budgets => new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["force.yaml"] = Resource("output-force.yaml"),
        ["dominated.yaml"] = """
            format: ramwright-budget/1
            result: { name: pressure, unit: bar }
            model: reading + correction
            inputs:
              reading: { value: 700 bar, parts: { display: { rectangular: 5 bar, effect: random } } }
              correction: { value: 1.2 bar, parts: { certificate: { expanded: 1 bar, k: 2, effect: systematic } } }

            """,
    };

    public static IReadOnlyDictionary<string, string> Series { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["series-07.csv"] = "run;peak_bar\n1;701.2\n2;698.4\n3;703.0\n4;699.7\n5;700.6\n6;697.9\n7;702.1\n8;700.9\n9;699.1\n10;701.7\n11;698.8\n12;700.4\n",
        ["series-08.csv"] = "run;peak_bar\n1;704.1\n2;693.0\n3;710.2\n4;697.5\n5;702.8\n6;689.9\n7;706.6\n8;702.5\n9;694.8\n10;705.9\n11;690.3\n12;700.1\n",
        ["earlier.csv"] = "# ten earlier series of the Corrie 85, made up\ndeviation_bar;runs\n4.6;12\n5.3;12\n4.9;12\n5.8;12\n4.4;12\n5.1;12\n4.8;12\n5.5;12\n5.0;12\n4.7;12\n",
        ["series-09.csv"] = "run;peak_bar;void\n1;701.2;\n2;698.4;\n3;703.0;\n4;655.8;trigger let go too early\n5;699.7;\n6;700.6;\n7;697.9;\n8;702.1;\n9;700.9;\n10;699.1;\n11;701.7;\n12;698.8;\n13;700.4;\n",
    };

    /// <summary>Recorded strokes of the invented reference tool.</summary>
    public static IReadOnlyDictionary<string, string> Recordings => new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["sound.csv"] = Resource("sound.csv"),
        ["bypass.csv"] = Resource("bypass.csv"),
    };

    public static IReadOnlyDictionary<string, string> PeakLists { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["memory-1.csv"] = "position,peak_bar\n1,700.1\n2,701.4\n3,699.0\n4,700.3\n",
        ["memory-2.csv"] = "position,peak_bar\n1,698.7\n2,700.1\n3,701.4\n4,699.0\n5,700.3\n",
    };

    /// <summary>A network of our own in the manner of the textbooks' burglar alarm; its figures are made up.</summary>
    public static IReadOnlyDictionary<string, string> Networks { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["alarm-call.bif"] = """
            network alarm_call { }
            variable burglary { type discrete [2] { yes, no }; }
            variable alarm { type discrete [2] { yes, no }; }
            variable call { type discrete [2] { yes, no }; }
            probability (burglary) { table 0.002, 0.998; }
            probability (alarm | burglary) { (yes) 0.94, 0.06; (no) 0.003, 0.997; }
            probability (call | alarm) { (yes) 0.9, 0.1; (no) 0.02, 0.98; }

            """,
    };

    private static string Resource(string name)
    {
        using var stream = typeof(ExampleFiles).Assembly.GetManifestResourceStream("examples/" + name) ?? throw new InvalidOperationException($"The example {name} is not bundled.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
