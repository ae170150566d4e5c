namespace Ramwright.ServiceModels.Tests.Samples;

/// <summary>Small invented models for tests.</summary>
public static class Sample
{
    /// <summary>Ten lines: what a proof needs and no more.</summary>
    public const string LevelZero = """
        format: ramwright/1
        tool:
          id: corrie-85
          name: Corrie 85
          kind: compression
        limits:
          pressure: 679 bar .. 721 bar
          nominal: 700 bar
          maximum: 735 bar
          proof-runs: 12

        """;

    /// <summary>An extract of a model with ways off, states and tools.</summary>
    public const string WaysOff = """
        format: ramwright/1
        tool: { id: corrie-85, name: Corrie 85, maker: Corrie, kind: compression, mass: 6.4 kg }
        limits: { pressure: 679 bar .. 721 bar, nominal: 700 bar, maximum: 735 bar, proof-runs: 12, rest: 40 s }
        states:
          battery-removed: { isolates: true, reach: { operation: take the pack off, minutes: 0.3 } }
          oil-drained: { reach: { operation: drain through the fill plug, minutes: 4, tool: hex-5, needs: [fill-plug] }, loses: 95 ml,
            undo: { operation: fill through the plug, kind: fill, after: [cap-nut], before: [fill-plug], minutes: 6, volume: 95 ml } }
        tools:
          hex-5: { kind: bought, name: hex key 5 mm, price: 3.20 EUR }
          hook-wrench-62: { kind: made, shape: hook-wrench, for-diameter: 62 mm, pin-diameter: 5 mm, pin-engagement: 4 mm, handle: 220 mm, material: 42CrMo4 }
          bench-press: { kind: bought }
          seal-pick: { kind: bought }
        parts:
          head: { name: head, number: C85-3101, ways-off: [ { needs: [battery-removed], tool: hex-5, posture: flat, minutes: 2, held-by: clamp } ], fit: { after: [cap-nut] } }
          fill-plug: { name: fill plug, number: C85-3140, ways-off: [ { needs: [battery-removed], tool: hex-5, posture: flat, minutes: 0.5, held-by: right-hand thread, breakaway: 6 N·m } ], fit: { torque: 6 N·m ± 10 % } }
          wedge-dowel: { name: wedge dowel, renew: always, number: C85-3109, ways-off: [ { needs: [head], minutes: 1, destroys: [wedge-dowel] } ], fit: { after: [cap-nut] } }
          cylinder: { name: cylinder, number: C85-3102, ways-off: [ { needs: [head, oil-drained], tool: bench-press, posture: flat, minutes: 8 } ], fit: {} }
          cap-nut:
            name: cap nut
            number: C85-3107
            ways-off:
              - { needs: [battery-removed, head, wedge-dowel], tool: hook-wrench-62, posture: upright-in-vice, minutes: 2.5, held-by: left-hand thread, breakaway: 85 N·m,
                  caution: { level: warning, hazard: stored-spring-energy, text: "1,450 N push the ram out at the last thread; hold the cap with the press cup" } }
              - { needs: [battery-removed, head, cylinder], tool: bench-press, posture: flat, minutes: 9, destroys: [ram-wiper], risk: { chance: 2 %, damages: [ram] } }
            fit: { after: [ram, seal-ram], torque: 85 N·m ± 5 %, lubricate: thread grease }
          ram: { name: ram, number: C85-3103, ways-off: [ { needs: [cap-nut], minutes: 1, disturbs: [seal-ram, ram-wiper] } ], fit: { after: [cylinder] } }
          seal-ram: { name: ram seal, number: C85-3111, count: 2, material: NBR, size: ISO3601-219, renew: when-disturbed, ways-off: [ { needs: [ram], tool: seal-pick, posture: flat, minutes: 1 } ], fit: { after: [ram] } }
          ram-wiper: { name: ram wiper, number: C85-3112, material: AU, renew: when-disturbed, ways-off: [ { needs: [ram], tool: seal-pick, posture: flat, minutes: 1 } ], fit: { after: [cylinder] } }

        """;

    /// <summary>A head for samples that show some sections only; a sample with a head of its own, or an empty one, stays as it is.</summary>
    public static string Whole(string sections) =>
        sections.Contains("format:", StringComparison.Ordinal) || sections.StartsWith('#') ? sections : LevelZero + sections;
}
