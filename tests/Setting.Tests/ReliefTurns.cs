namespace Ramwright.Setting.Tests;

/// <summary>Histories of one tool on the bench; every figure is invented.</summary>
public sealed class ReliefTurns
{
    [Fact]
    public void A_low_tool_is_brought_in_and_locked_and_checked() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     640 bar    advise clockwise 12/12..16/12 warn nothing
        turn    clockwise 14/12
        run     697 bar    advise stop warn nothing
        lock
        run     695 bar    advise stop warn nothing
        """);

    [Fact]
    public void A_lock_that_moves_the_setting_out_is_noticed() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     640 bar
        turn    clockwise 14/12
        run     697 bar    advise stop
        lock
        run     671 bar    advise clockwise 4/12..10/12
        """);

    [Fact]
    public void A_turn_that_only_takes_up_backlash_is_no_broken_spring() => SettingScript.Play("""
        relief  45 bar/turn, backlash 1/12 turn, limits 690..710 bar, maximum 730
        run     724 bar    advise anticlockwise 6/12..10/12
        turn    anticlockwise 6/12
        run     703 bar    warn nothing
        turn    clockwise 1/12
        run     703 bar    warn nothing
        """);

    [Fact]
    public void A_tool_found_high_is_lowered_past_the_aim_and_comes_up_from_below() => SettingScript.Play("""
        relief  120 bar/turn, backlash 1/12 turn, limits 679..721 bar, maximum 735
        run     733 bar    advise anticlockwise 4/12..9/12 warn nothing
        turn    anticlockwise 6/12
        run     676 bar    advise clockwise 1.5/12..4/12
        turn    clockwise 3/12
        run     697 bar    advise stop
        """);

    [Fact]
    public void A_screw_without_an_answer_goes_to_find() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     600 bar    advise clockwise 18/12..24/12 warn nothing
        turn    clockwise 20/12
        run     604 bar    advise find warn no-answer
        """);

    [Fact]
    public void A_screw_high_and_without_an_answer_goes_to_find_too() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     731 bar    advise anticlockwise 8/12..16/12
        turn    anticlockwise 12/12
        run     730 bar    advise find warn no-answer
        """);

    [Fact]
    public void A_weak_answer_is_looked_at_twice() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     612 bar
        turn    clockwise 8/12
        run     612 bar    advise run again warn may-not-answer
        run     613 bar    advise find warn no-answer
        """);

    [Fact]
    public void Electronics_that_stop_below_the_relief_are_told_from_a_dead_screw() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     560 bar
        turn    clockwise 24/12
        run     648 bar    advise clockwise 10/12..16/12 warn nothing
        turn    clockwise 12/12
        run     662 bar
        turn    clockwise 9/12
        run     662 bar    advise find warn answer-ends
        """);

    [Fact]
    public void A_screw_that_turns_the_other_way_goes_to_find() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     600 bar
        turn    clockwise 24/12
        run     512 bar    advise find warn answers-backwards
        """);

    [Fact]
    public void A_screw_that_lowers_clockwise_is_turned_back_to_raise() => SettingScript.Play("""
        relief  -45 bar/turn, limits 679..721 bar, maximum 735
        run     655 bar    advise anticlockwise 8/12..13/12 warn nothing
        turn    anticlockwise 10/12
        run     695 bar    advise stop warn nothing
        """);

    [Fact]
    public void A_run_past_the_maximum_is_told_and_only_lowered() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     690 bar
        run     760 bar    advise anticlockwise 12/12..24/12 warn above-maximum
        """);

    [Fact]
    public void Where_clockwise_lowers_a_run_past_the_maximum_is_lowered_clockwise() => SettingScript.Play("""
        relief  -45 bar/turn, limits 679..721 bar, maximum 735
        run     760 bar    advise clockwise 12/12..24/12 warn above-maximum
        """);

    [Fact]
    public void A_slip_in_the_last_reading_is_asked_for_again_before_any_turn() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     612 bar
        turn    clockwise 12/12
        run     655 bar
        run     566 bar    advise run again warn odd-reading
        run     656 bar    advise clockwise 8/12..13/12 warn odd-reading
        """);

    [Fact]
    public void A_missing_decimal_point_turns_no_screw() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     6120 bar   advise ask back warn reading-implausible
        """);

    [Fact]
    public void A_pressure_of_a_tenth_is_no_matter_of_setting() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     61.2 bar   advise find warn far-too-low
        """);

    [Fact]
    public void A_valve_of_another_gain_is_set_all_the_same_and_the_difference_told() => SettingScript.Play("""
        relief  45 bar/turn, limits 679..721 bar, maximum 735
        run     560 bar
        turn    clockwise 24/12
        run     600 bar
        turn    clockwise 20/12
        run     634 bar    advise clockwise 18/12..42/12 warn gain-unlike-model
        """);

    [Fact]
    public void Scatter_that_no_series_could_prove_is_an_answer() => SettingScript.Play("""
        relief  45 bar/turn, limits 690..710 bar, maximum 730
        run     712 bar
        run     688 bar
        run     709 bar
        run     684 bar
        run     716 bar
        run     690 bar    advise scatter
        """);

    [Fact]
    public void From_limits_alone_the_first_turn_is_careful() => SettingScript.Play("""
        relief  unknown, limits 679..721 bar, maximum 735
        run     612 bar    advise clockwise 1/12..8/12 warn nothing
        turn    clockwise 6/12
        run     633 bar    advise clockwise 6/12..20/12 warn nothing
        """);
}
