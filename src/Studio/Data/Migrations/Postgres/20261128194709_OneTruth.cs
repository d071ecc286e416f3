using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Studio.Data.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class OneTruth : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "DaysOff",
                table: "StudioSettings",
                type: "text",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<int>(
                name: "DeliveryDays",
                table: "StudioSettings",
                type: "integer",
                nullable: false,
                defaultValue: 2);

            migrationBuilder.AddColumn<int>(
                name: "ReserveDays",
                table: "StudioSettings",
                type: "integer",
                nullable: false,
                defaultValue: 3);

            migrationBuilder.AddColumn<double>(
                name: "UsualRoomC",
                table: "StudioSettings",
                type: "double precision",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "WorkDays",
                table: "StudioSettings",
                type: "text",
                nullable: false,
                defaultValue: "[\"mon\",\"tue\",\"wed\",\"thu\",\"fri\"]");

            migrationBuilder.AddColumn<TimeOnly>(
                name: "WorkFrom",
                table: "StudioSettings",
                type: "time without time zone",
                nullable: false,
                defaultValue: new TimeOnly(9, 0, 0));

            migrationBuilder.AddColumn<int>(
                name: "WorkMinutesPerDay",
                table: "StudioSettings",
                type: "integer",
                nullable: false,
                defaultValue: 240);

            migrationBuilder.AddColumn<TimeOnly>(
                name: "WorkUntil",
                table: "StudioSettings",
                type: "time without time zone",
                nullable: false,
                defaultValue: new TimeOnly(17, 0, 0));

            migrationBuilder.AddColumn<bool>(
                name: "Passed",
                table: "PourCorrection",
                type: "boolean",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<string>(
                name: "FailedAs",
                table: "Piece",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<DateTime>(
                name: "FailedAt",
                table: "Piece",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<long>(
                name: "FailedCost",
                table: "Piece",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "FailedWords",
                table: "Piece",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<int>(
                name: "InPlaceOf",
                table: "Piece",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<bool>(
                name: "ButtonCell",
                table: "Material",
                type: "boolean",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Changes",
                table: "KeepsakeEvent",
                type: "text",
                nullable: false,
                defaultValue: "[]");

            migrationBuilder.AddColumn<int>(
                name: "Count",
                table: "KeepsakeEvent",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "Format",
                table: "KeepsakeEvent",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "LayerId",
                table: "KeepsakeEvent",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "OldWords",
                table: "KeepsakeEvent",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<int>(
                name: "PieceId",
                table: "KeepsakeEvent",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "PourId",
                table: "KeepsakeEvent",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "RefId",
                table: "KeepsakeEvent",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Whom",
                table: "KeepsakeEvent",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<int>(
                name: "HeldCount",
                table: "Keepsake",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<double>(
                name: "HeldG",
                table: "Keepsake",
                type: "double precision",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "OverruledBy",
                table: "Keepsake",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "OverruledWhy",
                table: "Keepsake",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<int>(
                name: "PartCount",
                table: "Keepsake",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<double>(
                name: "PartG",
                table: "Keepsake",
                type: "double precision",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "About",
                table: "CommissionEvent",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<long>(
                name: "EndedSpent",
                table: "Commission",
                type: "bigint",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "EndedWhy",
                table: "Commission",
                type: "text",
                nullable: false,
                defaultValue: "");

            migrationBuilder.CreateTable(
                name: "AccessEntry",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false),
                    UserId = table.Column<string>(type: "text", nullable: false),
                    ByUserId = table.Column<string>(type: "text", nullable: false),
                    Detail = table.Column<string>(type: "text", nullable: false),
                    Network = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_AccessEntry", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "CustodyCheck",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Looked = table.Column<int>(type: "integer", nullable: false),
                    Faults = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_CustodyCheck", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "IssuedPaper",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Kind = table.Column<string>(type: "text", nullable: false),
                    Number = table.Column<string>(type: "text", nullable: false),
                    CommissionId = table.Column<int>(type: "integer", nullable: false),
                    RefId = table.Column<int>(type: "integer", nullable: true),
                    FileName = table.Column<string>(type: "text", nullable: false),
                    Hash = table.Column<string>(type: "text", nullable: false),
                    Bytes = table.Column<long>(type: "bigint", nullable: false),
                    At = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    By = table.Column<string>(type: "text", nullable: false),
                    SubmitKey = table.Column<string>(type: "text", nullable: false),
                    State = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_IssuedPaper", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "SignedIn",
                columns: table => new
                {
                    Id = table.Column<string>(type: "text", nullable: false),
                    UserId = table.Column<string>(type: "text", nullable: false),
                    Stamp = table.Column<string>(type: "text", nullable: false),
                    StartedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    SeenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Device = table.Column<string>(type: "text", nullable: false),
                    Network = table.Column<string>(type: "text", nullable: false),
                    EndedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Ended = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_SignedIn", x => x.Id);
                    table.ForeignKey(
                        name: "FK_SignedIn_AspNetUsers_UserId",
                        column: x => x.UserId,
                        principalTable: "AspNetUsers",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_KeepsakeEvent_PourId",
                table: "KeepsakeEvent",
                column: "PourId");

            migrationBuilder.CreateIndex(
                name: "IX_IssuedPaper_CommissionId",
                table: "IssuedPaper",
                column: "CommissionId");

            migrationBuilder.CreateIndex(
                name: "IX_IssuedPaper_Kind_RefId",
                table: "IssuedPaper",
                columns: new[] { "Kind", "RefId" });

            migrationBuilder.CreateIndex(
                name: "IX_SignedIn_UserId",
                table: "SignedIn",
                column: "UserId");

            // what the seed catalogue itself knows of its own rows; a maker's own are asked
            migrationBuilder.Sql("""UPDATE "Material" SET "ButtonCell" = TRUE WHERE "Name" IN ('Light string, 10 lights, coin cell', 'Coin cell CR2032')""");
            migrationBuilder.Sql("""UPDATE "Material" SET "ButtonCell" = FALSE WHERE "Name" IN ('Light string, 20 lights, warm white, for two AA cells', 'Light plate, round 60 mm, with cable', 'AA cell, alkaline (LR6)', 'AAA cell, alkaline (LR03)')""");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "AccessEntry");

            migrationBuilder.DropTable(
                name: "CustodyCheck");

            migrationBuilder.DropTable(
                name: "IssuedPaper");

            migrationBuilder.DropTable(
                name: "SignedIn");

            migrationBuilder.DropIndex(
                name: "IX_KeepsakeEvent_PourId",
                table: "KeepsakeEvent");

            migrationBuilder.DropColumn(
                name: "DaysOff",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "DeliveryDays",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "ReserveDays",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "UsualRoomC",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "WorkDays",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "WorkFrom",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "WorkMinutesPerDay",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "WorkUntil",
                table: "StudioSettings");

            migrationBuilder.DropColumn(
                name: "Passed",
                table: "PourCorrection");

            migrationBuilder.DropColumn(
                name: "FailedAs",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "FailedAt",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "FailedCost",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "FailedWords",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "InPlaceOf",
                table: "Piece");

            migrationBuilder.DropColumn(
                name: "ButtonCell",
                table: "Material");

            migrationBuilder.DropColumn(
                name: "Changes",
                table: "KeepsakeEvent");

            migrationBuilder.DropColumn(
                name: "Count",
                table: "KeepsakeEvent");

            migrationBuilder.DropColumn(
                name: "Format",
                table: "KeepsakeEvent");

            migrationBuilder.DropColumn(
                name: "LayerId",
                table: "KeepsakeEvent");

            migrationBuilder.DropColumn(
                name: "OldWords",
                table: "KeepsakeEvent");

            migrationBuilder.DropColumn(
                name: "PieceId",
                table: "KeepsakeEvent");

            migrationBuilder.DropColumn(
                name: "PourId",
                table: "KeepsakeEvent");

            migrationBuilder.DropColumn(
                name: "RefId",
                table: "KeepsakeEvent");

            migrationBuilder.DropColumn(
                name: "Whom",
                table: "KeepsakeEvent");

            migrationBuilder.DropColumn(
                name: "HeldCount",
                table: "Keepsake");

            migrationBuilder.DropColumn(
                name: "HeldG",
                table: "Keepsake");

            migrationBuilder.DropColumn(
                name: "OverruledBy",
                table: "Keepsake");

            migrationBuilder.DropColumn(
                name: "OverruledWhy",
                table: "Keepsake");

            migrationBuilder.DropColumn(
                name: "PartCount",
                table: "Keepsake");

            migrationBuilder.DropColumn(
                name: "PartG",
                table: "Keepsake");

            migrationBuilder.DropColumn(
                name: "About",
                table: "CommissionEvent");

            migrationBuilder.DropColumn(
                name: "EndedSpent",
                table: "Commission");

            migrationBuilder.DropColumn(
                name: "EndedWhy",
                table: "Commission");
        }
    }
}
